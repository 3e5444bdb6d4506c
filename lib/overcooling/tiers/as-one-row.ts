import type { Cell, TierModel } from "../component-model";
import type { Row } from "../rows";

/** The rows that a tier is worked out by, and their heaters' energy. */
export type RowsAndHeaters = { rows: readonly Row[]; heaters: readonly Cell[] };

/**
 * All rows as one, for a tier that stands beside a better one and shows nothing but its total: its components are
 * straight in floor area, heaters and reports, so that the total is the same and thousands of rows need not be drawn. The
 * heaters' energy is that of the better tier.
 */
export function asOneRow(rows: readonly Row[], better: TierModel): RowsAndHeaters {
  const all: Row = {
    zoneId: null,
    code: "whole building",
    floorAreaM2: rows.reduce((sum, each) => sum + each.floorAreaM2, 0),
    areaOrigin: "computed",
    areaShare: 1,
    zone: null,
    heaters: rows.flatMap((each) => each.heaters),
    coldReportsPerYear: rows.reduce((sum, each) => sum + each.coldReportsPerYear, 0),
    record: null,
  };
  const known = better.components.find((each) => each.id === "heater-energy");
  return {
    rows: [all],
    heaters: known ? [{ row: all, electric: known.electric, heat: null, money: known.money }] : [],
  };
}
