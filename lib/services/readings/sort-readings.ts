import type { PointRow } from "@/db/queries/points";
import { convertToStored, type StoredSamples } from "@/lib/importers/trend-csv/convert-to-stored";
import { statusMeaning } from "@/lib/importers/trend-csv/status-words";
import { FILE_UNITS, type FileUnit } from "@/lib/importers/trend-csv/trend-file";
import { readUnit } from "@/lib/importers/trend-csv/units";
import { ServiceError } from "../errors";
import { readStamp } from "./read-stamp";
import type { ReadingSeries } from "./readings-input";

export type Rejection = { point: string; at: string; reason: string };

/** Readings of a point that can be stored, and what became of each: accepted + repaired + rejected are all of them. */
export type SortedReadings = {
  stored: Pick<StoredSamples, "ts" | "v" | "decimals">;
  accepted: number;
  repaired: number;
  rejections: Rejection[];
};

type Kept = { at: string; value: number; repaired: boolean };

/** Sorts the readings of one point into those that are stored and those that are not, with the reason. */
export function sortReadings(point: PointRow, { readings, unit }: ReadingSeries, nowMs: number): SortedReadings {
  const name = point.externalName;
  const rejections: Rejection[] = [];
  const kept = new Map<number, Kept>();
  for (const { at, value, status } of readings) {
    const reject = (reason: string) => void rejections.push({ point: name, at, reason });
    const stamp = readStamp(at, nowMs);
    const meaning = status === undefined ? "good" : statusMeaning(status);
    if (stamp.status === "rejected") reject(stamp.reason);
    else if (value === null) reject("no value");
    else if (meaning === "bad") reject(`its status is ${status}`);
    else if (meaning === null) reject(`its status, ${status}, is not known`);
    else {
      const before = kept.get(stamp.tsUtcSeconds);
      if (before)
        rejections.push({ point: name, at: before.at, reason: "given again in the same call: the later one stands" });
      kept.set(stamp.tsUtcSeconds, { at, value: Number(value), repaired: stamp.rounded });
    }
  }
  const stored = convert(point, unit, kept);
  const storedTs = new Set(stored.ts);
  let repaired = 0;
  for (const [ts, each] of kept) {
    if (!storedTs.has(ts))
      rejections.push({ point: name, at: each.at, reason: `${each.value} cannot be: outside the limits of its kind` });
    else if (each.repaired) repaired++;
  }
  return { stored, accepted: stored.ts.length - repaired, repaired, rejections };
}

function convert(point: PointRow, unit: string | null, kept: ReadonlyMap<number, Kept>): StoredSamples {
  const ts = [...kept.keys()].sort((a, b) => a - b);
  const values = ts.map((each) => (kept.get(each) as Kept).value);
  const verdict = convertToStored(
    {
      name: point.externalName,
      kind: "numeric",
      unit: unitOf(point, unit),
      tsUtcSeconds: Float64Array.from(ts),
      values: Float64Array.from(values),
    },
    point.kind,
  );
  if (verdict.status !== "ok") throw new ServiceError("invalid", `${verdict.sentence} Nothing was stored.`);
  return verdict;
}

/** The unit that the call says, or the one that the point was mapped with. */
function unitOf(point: PointRow, said: string | null): FileUnit | null {
  if (said === null) return FILE_UNITS.find((known) => known === point.fileUnit) ?? null;
  return FILE_UNITS.find((known) => known === said) ?? readUnit(said)?.unit ?? null;
}
