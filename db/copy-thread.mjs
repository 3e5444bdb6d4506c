import { parentPort, workerData } from "node:worker_threads";
import { copyFile } from "./copy-file.mjs";

/* Program of a thread: copies the file `from` to the new file `to`, and tells its SHA-256. */
parentPort?.postMessage(copyFile(workerData.from, workerData.to));
