import { readFileSync } from "node:fs";
import path from "node:path";

export type Fit = { a: number; b: number; spreadA: number; spreadB: number; meanErrorA: number; meanErrorB: number };
/** Votes of a building by half kelvin: temperature [°C], votes, warmer, cooler. */
export type VoteCell = [airTempC: number, votes: number, warmer: number, cooler: number];
export type VotesByBuilding = {
  buildings: Record<"summer" | "winter", { fold: number; cells: VoteCell[] }[]>;
  fits: Record<"summer" | "winter", Record<"warmer" | "cooler", { all: Fit; folds: Fit[] }>>;
};

const FILE = path.join(import.meta.dirname, "../../fixtures/field-votes/votes-by-building.json");

/** The field votes by building with their fits, as the script beside the fixture made them. */
export const votesByBuilding = (): VotesByBuilding => JSON.parse(readFileSync(FILE, "utf8"));
