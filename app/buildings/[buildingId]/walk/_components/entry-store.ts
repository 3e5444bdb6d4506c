import type { LocalEntry } from "../view-model";

const NAME = "walk-through";
const STORE = "entries";

/** Entries in the browser's own database: what is kept there survives a reload and a battery that runs out. */
export type EntryStore = {
  list(buildingId: number): Promise<LocalEntry[]>;
  /** Done when it is on the disk. */
  keep(entry: LocalEntry): Promise<void>;
  drop(clientId: string): Promise<void>;
};

export async function openEntryStore(): Promise<EntryStore> {
  const db = await opened();
  return {
    async list(buildingId) {
      const all = await answered<LocalEntry[]>(db.transaction(STORE).objectStore(STORE).getAll());
      return all.filter((entry) => entry.buildingId === buildingId).sort((a, b) => a.madeAtMs - b.madeAtMs);
    },
    keep: (entry) => written(db, (store) => store.put(entry)),
    drop: (clientId) => written(db, (store) => store.delete(clientId)),
  };
}

function opened(): Promise<IDBDatabase> {
  const request = indexedDB.open(NAME, 1);
  request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: "clientId" });
  return answered(request);
}

function answered<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

function written(db: IDBDatabase, write: (store: IDBObjectStore) => unknown): Promise<void> {
  return new Promise((resolve, reject) => {
    const transaction = db.transaction(STORE, "readwrite", { durability: "strict" });
    transaction.oncomplete = () => resolve();
    transaction.onerror = () => reject(transaction.error);
    transaction.onabort = () => reject(transaction.error);
    write(transaction.objectStore(STORE));
  });
}

/** An id that no other phone makes. `randomUUID` is there on secure addresses only; the numbers it is made of are always. */
export function newClientId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = ((bytes[6] as number) & 0x0f) | 0x40;
  bytes[8] = ((bytes[8] as number) & 0x3f) | 0x80;
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}
