import fc from "fast-check";
import { expect, test } from "vitest";
import { convertToStored } from "@/lib/importers/trend-csv/convert-to-stored";
import type { FileUnit } from "@/lib/importers/trend-csv/trend-file";
import type { PointKind } from "@/lib/trends/point-kind";

const KINDS: [PointKind, FileUnit][] = [
  ["zone-air-temp", "degF"],
  ["zone-air-temp", "kelvin"],
  ["airflow", "cfm"],
  ["damper-position", "percent"],
  ["occupancy", "percent"],
];

test("whole numbers are stored as the numbers they stand for, implausible ones included", () => {
  const numbers = fc.tuple(fc.integer({ min: -2000, max: 4000 }), fc.integer({ min: 0, max: 60 }));
  fc.assert(
    fc.property(
      fc.constantFrom(...KINDS),
      fc.integer({ min: 0, max: 3 }),
      fc.array(numbers, { maxLength: 120 }),
      ([kind, unit], decimals, pairs) => {
        // About one number, so that they lie close, as those of a sensor do, or anywhere.
        const middle = pairs[0]?.[0] ?? 0;
        const scaled = Int32Array.from(pairs, ([far, near], i) =>
          pairs.length % 3 === 0 ? far : middle + ((near * i) % 61),
        );
        // In two stretches, which may be written with decimals of their own.
        const cut = pairs.length >> 1;
        const decimalsAt = (i: number): number => (i < cut ? decimals : decimals + (pairs.length % 2));
        const values = Float64Array.from(scaled, (number, i) => number / 10 ** decimalsAt(i));
        const tsUtcSeconds = Float64Array.from(scaled, (_, i) => 1_700_000_000 + 900 * i);
        const point = { name: "ZN-T", kind: "numeric" as const, unit, tsUtcSeconds, values };
        const whole = [scaled.subarray(0, cut), scaled.subarray(cut)].map((part, k) => ({
          ...{ scaled: part, decimals: decimalsAt(k * cut) },
          ...{ lowest: Math.min(...part), highest: Math.max(...part) },
        }));
        expect(convertToStored({ ...point, whole }, kind)).toEqual(convertToStored(point, kind));
      },
    ),
    { numRuns: 500, seed: 8 },
  );
});
