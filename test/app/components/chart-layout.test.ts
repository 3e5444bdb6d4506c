import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { placeParts } from "@/app/_components/charts/contribution-layout";
import { spread } from "@/app/_components/charts/end-labels";
import { thinPoints } from "@/app/_components/charts/thin-points";

describe("thinning of a series", () => {
  it("keeps the ends and the extremes, in order, and never invents a sample", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { minLength: 1, maxLength: 3000 }),
        (values) => {
          const points = values.map((v, index) => ({ t: 1000 + index * 60, v }));
          const thinned = thinPoints(points, 50);
          expect(thinned[0]).toEqual(points[0]);
          expect(thinned[thinned.length - 1]).toEqual(points[points.length - 1]);
          expect(Math.min(...thinned.map(({ v }) => v))).toBe(Math.min(...values));
          expect(Math.max(...thinned.map(({ v }) => v))).toBe(Math.max(...values));
          expect(thinned.length).toBeLessThanOrEqual(51 * 4);
          for (let i = 1; i < thinned.length; i++) expect(thinned[i]?.t ?? 0).toBeGreaterThan(thinned[i - 1]?.t ?? 0);
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe("parts of a stacked bar", () => {
  const positive = fc.array(fc.double({ min: 0.01, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 5 });

  it("lie end to end and fill the bar", () => {
    fc.assert(
      fc.property(positive, (values) => {
        const placed = placeParts(values.map((value, index) => ({ label: String(index), value })));
        expect(placed.reduce((sum, part) => sum + part.widthPct, 0)).toBeCloseTo(100, 6);
        placed.forEach((part, index) => {
          const before = placed[index - 1];
          expect(part.startPct).toBeCloseTo(before ? before.startPct + before.widthPct : 0, 6);
        });
      }),
    );
  });

  it("have leaders that cross no label", () => {
    fc.assert(
      fc.property(positive, (values) => {
        const placed = placeParts(values.map((value, index) => ({ label: String(index), value })));
        for (const label of placed) {
          for (const other of placed.filter((each) => each !== label && each.side === label.side)) {
            const underText =
              label.side === "below" ? other.centerPct > label.centerPct : other.centerPct < label.centerPct;
            if (underText) expect(other.level).toBeLessThan(label.level);
          }
        }
      }),
    );
  });
});

describe("labels at the ends of lines", () => {
  it("stand apart, in order, within the chart", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { maxLength: 5 }), (positions) => {
        const placed = spread(positions, { gap: 15, min: 0, max: 300 });
        const sorted = [...placed].sort((a, b) => a - b);
        for (let i = 1; i < sorted.length; i++)
          expect((sorted[i] ?? 0) - (sorted[i - 1] ?? 0)).toBeGreaterThanOrEqual(15 - 1e-9);
        for (const y of placed) {
          expect(y).toBeGreaterThanOrEqual(-1e-9);
          expect(y).toBeLessThanOrEqual(300);
        }
      }),
    );
  });

  it("stay where they are when there is room", () => {
    expect(spread([200, 20, 100], { gap: 15, min: 0, max: 300 })).toEqual([200, 20, 100]);
  });
});
