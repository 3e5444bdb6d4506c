import { pathToFileURL } from "node:url";
import { workerData } from "node:worker_threads";
import { register } from "tsx/esm/api";

/* First program of a thread: lets it run TypeScript as it stands in the source, and hands over to `program`. */
register();
await import(pathToFileURL(workerData.program).href);
