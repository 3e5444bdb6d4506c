import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { TrendAnswers } from "@/lib/importers/trend-csv/trend-file";

/** Made-up exports with what a correct import yields; the expectations were made with Python zoneinfo and a second reader. */
const FOLDER = fileURLToPath(new URL("../../../shared/data/trend-shapes/", import.meta.url));

export type ExpectedPoint = {
  name: string;
  kind: "numeric" | "state";
  unitAsWritten: string | null;
  unit: string | null;
  readings: number;
  firstUtc: string;
  lastUtc: string;
  first: number | string;
  last: number | string;
  sum?: number;
  spot?: { utc: string; value: number | string }[];
  states?: string[];
  missing?: number;
  intervalSeconds?: number;
};

export type ExpectedFinding = { code: string; severity: string } & Record<string, unknown>;

export type TrendShape = {
  id: string;
  file: string;
  bytes: Uint8Array;
  note: string;
  building: { timeZone: string; locale?: string };
  given: TrendAnswers;
  outcome: string;
  detected?: Record<string, unknown>;
  points?: ExpectedPoint[];
  ask?: { what: string; choices: string[]; proposal?: string; points?: string[] }[];
  ifAnswered?: Record<string, ExpectedPoint[]>;
  refusal?: { code: string; mustSay: string[]; lines?: number[] };
  findings: ExpectedFinding[];
  forbidden: string[];
};

export function readTrendShapes(): TrendShape[] {
  return readdirSync(FOLDER)
    .filter((name) => name.endsWith(".expected.json"))
    .sort()
    .map((name) => {
      const expected = JSON.parse(readFileSync(FOLDER + name, "utf8")) as Omit<TrendShape, "id" | "bytes">;
      return { ...expected, id: name.slice(0, 2), bytes: new Uint8Array(readFileSync(FOLDER + expected.file)) };
    });
}
