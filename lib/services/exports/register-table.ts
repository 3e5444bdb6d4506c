import type { Cell } from "./csv";

/** One table of the register: headings with their units, and rows. */
export type RegisterTable = { name: string; columns: string[]; rows: Cell[][] };

/** An instant as it stands in a table: ISO 8601 in UTC. */
export const instant = (ms: number | null): string | null => (ms === null ? null : new Date(ms).toISOString());
