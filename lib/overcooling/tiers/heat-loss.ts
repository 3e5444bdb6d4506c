import { exact, type Step, step } from "../calculation/quantity";
import { rowLabel } from "../component-model";
import type { Plant } from "../plant";
import type { Row } from "../rows";

/** Heat loss coefficient of a row by its floor area (reference Q8). */
export const zoneHeatLoss = (row: Row, plant: Plant): Step =>
  step({
    symbol: "UA_z",
    label: `heat loss coefficient, ${rowLabel(row)}`,
    unit: "kW/K",
    formula: "UA_z = u * A_z / 1000",
    terms: [
      plant.heatLossPerArea,
      exact({
        symbol: "A_z",
        label: `floor area, ${rowLabel(row)}`,
        unit: "m²",
        value: row.floorAreaM2,
        origin: row.areaOrigin,
        source: row.areaOrigin === "computed" ? "share of the floor area left by the other zones" : "zone record",
        href: "/zones",
      }),
    ],
    compute: (perArea, area) => (perArea * area) / 1000,
  });
