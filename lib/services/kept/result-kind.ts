import type { BuildingRow } from "@/db/queries/buildings";
import type { Context } from "../context";
import type { Input } from "./inputs";

/**
 * A kind of result that pages show: what it rests on, and how it is worked out. A part of it, such as a zone's, is kept
 * by itself. `workOut` may keep its own costly steps with `cached`, so that a small change costs little.
 */
export type ResultKind<T> = {
  name: string;
  /** Raised when the same inputs give another result: what was kept before is then worked out anew. */
  version: number;
  inputs: readonly Exclude<Input, "program">[];
  workOut(ctx: Context, building: BuildingRow, part: string | null): Promise<T>;
};
