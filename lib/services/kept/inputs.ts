import { createHash } from "node:crypto";
import type { BuildingRow } from "@/db/queries/buildings";
import { readInputMarks } from "@/db/queries/input-marks";
import type { Context } from "../context";

/** What results rest on, by the name that pages have a word for. `program` is the version of the calculation itself. */
export const INPUTS = [
  "trends",
  "mapping",
  "zones",
  "devices",
  "reports",
  "building",
  "assumptions",
  "weather",
  "bills",
  "proposals",
  "imports",
  "program",
] as const;
export type Input = (typeof INPUTS)[number];

export type InputHashes = Readonly<Record<Exclude<Input, "program">, string>>;

/** Hashes of everything that the results of a building rest on, as it stands now. */
export async function readInputHashes(
  ctx: Pick<Context, "db" | "trends">,
  { id }: Pick<BuildingRow, "id">,
): Promise<InputHashes> {
  const { pointIds, ...marks } = readInputMarks(ctx.db, id);
  const revisions = await ctx.trends.rev(pointIds);
  return {
    trends: hashOf(JSON.stringify(revisions)),
    mapping: hashOf(marks.mapping),
    zones: hashOf(marks.zones),
    devices: hashOf(marks.devices),
    reports: hashOf(marks.reports),
    building: hashOf(marks.building),
    assumptions: hashOf(marks.assumptions),
    weather: hashOf(marks.weather),
    bills: hashOf(marks.bills),
    proposals: hashOf(marks.proposals),
    imports: hashOf(marks.imports),
  };
}

const hashOf = (text: string): string => createHash("sha256").update(text).digest("base64url").slice(0, 16);

/** What a kind of result rests on, as it is kept beside the result. */
export function restsOn(kind: { inputs: readonly Input[]; version: number }, hashes: InputHashes): string {
  const own = kind.inputs.map((name) => [name, name === "program" ? "" : hashes[name]]);
  return JSON.stringify({ ...Object.fromEntries(own), program: String(kind.version) });
}

/** The inputs that read differently in two texts of `restsOn`. */
export function changedInputs(before: string, now: string): Input[] {
  const [a, b] = [JSON.parse(before), JSON.parse(now)] as [Record<string, string>, Record<string, string>];
  return INPUTS.filter((name) => a[name] !== b[name]);
}
