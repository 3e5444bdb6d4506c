import path from "node:path";

/** Folder of everything a test run leaves behind. */
export const RESULTS = path.resolve(import.meta.dirname, "../../test-results");

/** The servers of the browser tests: one on an empty database, one with the demo building. */
export const SERVERS = {
  empty: { port: 3411, dataFolder: path.join(RESULTS, "data-empty") },
  demo: { port: 3412, dataFolder: path.join(RESULTS, "data-demo") },
} as const;

export type ServerName = keyof typeof SERVERS;
export const baseUrl = (name: ServerName): string => `http://127.0.0.1:${SERVERS[name].port}`;
