import type { Worked } from "@/lib/proposals/live-picture";
import type { Context } from "../context";
import { readIssued } from "./decide";
import { expectedOf } from "./expected";

/** Electricity that an issued proposal promised for an occupied day of its season; null in copies that were issued before it was frozen. */
export function readPromise(ctx: Context, buildingId: number, id: number): Worked | null {
  const issued = readIssued(ctx, buildingId, id);
  return issued ? expectedOf(issued).kwhPerDayRange : null;
}
