import { dataFolder } from "./data-folder";
import { type ImportWorker, startImportWorker } from "./import-worker";
import { openStores, type Stores } from "./open-stores";

type Shared = { stores: Stores; importWorker: ImportWorker };

const KEY = Symbol.for("setpoint-ledger.stores");
const shared = globalThis as typeof globalThis & { [KEY]?: Shared };

/** The stores of the data folder, opened at the first request and shared by every copy of this module. */
export const getStores = (): Stores => getShared().stores;

/** Tells the worker that there is something in the import queue. It looks by itself too, only later. */
export const pokeImportWorker = (): void => getShared().importWorker.poke();

/** Opening the stores starts the import worker: what an earlier server left in the queue goes on. */
function getShared(): Shared {
  const present = shared[KEY];
  if (present) return present;
  const folder = dataFolder();
  const stores = openStores(folder);
  shared[KEY] = { stores, importWorker: startImportWorker(folder, stores.db) };
  return shared[KEY];
}
