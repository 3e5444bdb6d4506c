import { expect, it } from "vitest";
import { hasSharedSet, readSharedCsv } from "@/test/support/shared-sets";

/** Air-conditioned offices of the ASHRAE Global Thermal Comfort Database II (CC0), with facts printed in the set's description. */
const SET = "comfort-votes/votes_office.csv.gz";
const SHARE_WARMER = [
  { from: 20, votes: 218, share: 0.4037 },
  { from: 21, votes: 742, share: 0.2682 },
  { from: 22, votes: 2545, share: 0.2008 },
  { from: 23, votes: 2536, share: 0.1613 },
  { from: 24, votes: 1909, share: 0.0938 },
  { from: 25, votes: 1001, share: 0.0729 },
];

it.skipIf(!hasSharedSet(SET))(
  "field votes have the shares by degree and the line that their description prints",
  () => {
    const cooled = new Set(
      readSharedCsv("comfort-votes/buildings.csv").flatMap((row) =>
        row.cooling_type === "air conditioned" ? [row.building_id] : [],
      ),
    );
    const rows = readSharedCsv(SET).filter((row) => cooled.has(row.building_id) && row.ta !== "");
    for (const { from, votes, share } of SHARE_WARMER) {
      const there = rows.filter(
        ({ ta, thermal_preference: wish }) => wish !== "" && Number(ta) >= from && Number(ta) < from + 1,
      );
      expect(there.length, String(from)).toBe(votes);
      const warmer = there.filter((row) => row.thermal_preference === "warmer").length;
      expect(Math.abs(warmer / votes - share), String(from)).toBeLessThanOrEqual(0.00005);
    }
    const felt = rows.flatMap((row) =>
      row.thermal_sensation === "" ? [] : [[Number(row.ta), Number(row.thermal_sensation)] as const],
    );
    expect(felt.length).toBe(10_427);
    const mean = (of: 0 | 1): number => felt.reduce((sum, each) => sum + each[of], 0) / felt.length;
    const [x, y] = [mean(0), mean(1)];
    const slope =
      felt.reduce((sum, [ta, vote]) => sum + (ta - x) * (vote - y), 0) /
      felt.reduce((sum, [ta]) => sum + (ta - x) ** 2, 0);
    expect(Math.abs(slope - 0.14845)).toBeLessThanOrEqual(0.000005);
    expect(Math.abs(x - y / slope - 24.348)).toBeLessThanOrEqual(0.0005);
  },
);
