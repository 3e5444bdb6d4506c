import path from "node:path";

/** Folder of everything a test run leaves behind. */
export const RESULTS = path.resolve(import.meta.dirname, "../../test-results");

/** Ports from here on; another number lets two runs stand beside each other. */
const FIRST_PORT = Number(process.env.BROWSER_TESTS_FIRST_PORT ?? 3411);

/** The servers of the browser tests: on an empty database, with the demo building, and with a first year to be proved by a second. */
export const SERVERS = {
  empty: { port: FIRST_PORT, dataFolder: path.join(RESULTS, "data-empty") },
  demo: { port: FIRST_PORT + 1, dataFolder: path.join(RESULTS, "data-demo") },
  proof: { port: FIRST_PORT + 2, dataFolder: path.join(RESULTS, "data-proof") },
} as const;

export type ServerName = keyof typeof SERVERS;
export const baseUrl = (name: ServerName): string => `http://127.0.0.1:${SERVERS[name].port}`;
