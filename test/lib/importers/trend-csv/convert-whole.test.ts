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
        const values = Float64Array.from(scaled, (number) => number / 10 ** decimals);
        const tsUtcSeconds = Float64Array.from(scaled, (_, i) => 1_700_000_000 + 900 * i);
        const point = { name: "ZN-T", kind: "numeric" as const, unit, tsUtcSeconds, values };
        expect(convertToStored({ ...point, whole: { scaled, decimals } }, kind)).toEqual(convertToStored(point, kind));
      },
    ),
    { numRuns: 500, seed: 8 },
  );
});
