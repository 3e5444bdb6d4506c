/** A part of a sum, in the unit of the sum. */
export type Part = { label: string; value: number };

export type PlacedPart = Part & {
  startPct: number;
  widthPct: number;
  centerPct: number;
  /** Labels of the left half stand under the bar, those of the right half above; level 0 is nearest to it. */
  side: "above" | "below";
  level: number;
};

/**
 * Places parts along a bar of 100 % and their labels so that no leader crosses a label: under the bar the leftmost
 * label is the farthest, above it the rightmost is. Parts must not be negative.
 */
export function placeParts(parts: readonly Part[]): PlacedPart[] {
  const total = parts.reduce((sum, part) => sum + part.value, 0);
  let start = 0;
  const placed = parts
    .filter((part) => part.value > 0)
    .map((part) => {
      const widthPct = (part.value / total) * 100;
      const centerPct = start + widthPct / 2;
      const side: PlacedPart["side"] = centerPct < 50 ? "below" : "above";
      const result: PlacedPart = { ...part, startPct: start, widthPct, centerPct, side, level: 0 };
      start += widthPct;
      return result;
    });
  const below = placed.filter((part) => part.side === "below");
  const above = placed.filter((part) => part.side === "above");
  below.forEach((part, index) => {
    part.level = below.length - 1 - index;
  });
  above.forEach((part, index) => {
    part.level = index;
  });
  return placed;
}
