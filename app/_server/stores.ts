import type { Analyst } from "@/lib/services/kept/analyst";
import { type BackgroundWorker, startBackgroundWorker } from "./background-worker";
import { dataFolder } from "./data-folder";
import { openStores, type Stores } from "./open-stores";

type Shared = { stores: Stores; worker: BackgroundWorker };

const KEY = Symbol.for("setpoint-ledger.stores");
const shared = globalThis as typeof globalThis & { [KEY]?: Shared };

/** The stores of the data folder, opened at the first request and shared by every copy of this module. */
export const getStores = (): Stores => getShared().stores;

/** Who works results out while pages show the last ones. */
export const getAnalyst = (): Analyst => getShared().worker.analyst;

/** Tells the worker that there is something in the import queue. It looks by itself too, only later. */
export const pokeImportWorker = (): void => getShared().worker.poke();

/** Opening the stores starts the background thread: what an earlier server left in the import queue goes on. */
function getShared(): Shared {
  const present = shared[KEY];
  if (present) return present;
  const folder = dataFolder();
  const stores = openStores(folder, { answersPeople: true });
  shared[KEY] = { stores, worker: startBackgroundWorker(folder, stores.db) };
  return shared[KEY];
}
