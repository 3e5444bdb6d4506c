import { exact, type Input, type Quantity, step, sum } from "../calculation/quantity";
import { type Cell, costOf, rowLabel } from "../component-model";
import { heatRemovalKwh, reheatCreditKwh } from "../components/heat-removal";
import { heaterEnergyKwh } from "../components/heater-energy";
import type { Plant } from "../plant";
import type { Row } from "../rows";

/** C1 of one row; null without space heaters. */
export function heaterEnergyCell(row: Row, plant: Plant, currency: string): Cell | null {
  if (row.heaters.length === 0) return null;
  const plug = sum({
    symbol: "K_z",
    label: `energy of the space heaters, ${rowLabel(row)}`,
    unit: "kWh a year",
    formula: "K_z = sum of the heaters",
    parts: row.heaters.map((each): { symbol: string; label: string; quantity: Input } => ({
      symbol: `K_{${each.label.replace(/[{}]/g, "")}}`,
      label: each.label,
      quantity: {
        kind: "input",
        id: `device/${each.deviceId}`,
        group: { id: "heater-energy", label: "energy of the space heaters" },
        symbol: "K",
        label: each.label,
        unit: "kWh a year",
        value: each.energyKwhPerYear.value,
        low: each.energyKwhPerYear.low,
        high: each.energyKwhPerYear.high,
        origin: "computed",
        source: "measurement sheet of the device",
        href: `/devices/${each.deviceId}`,
      },
    })),
  });
  const electric = step({
    symbol: "E_1",
    label: `heater electricity in cooling-season occupied hours, ${rowLabel(row)}`,
    unit: "kWh a year",
    formula: "E_1 = K_z * f_oc",
    terms: [plug, plant.assumed.shared("heater-in-overcooled-hours-fraction", "f_oc")],
    compute: (plugKwh, overcooledFraction) => heaterEnergyKwh({ plugKwh, overcooledFraction }),
  });
  const energy = { electric, heat: null };
  return { row, ...energy, money: costOf("heater-energy", energy, plant, currency) };
}

/** How the heaters' kWh fall to the zone's states, and what part of the return air is exhausted. */
export type HeatSplit = {
  cooling: Quantity;
  deadband: Quantity;
  reheat: Quantity;
  outdoorAirFraction: Quantity;
  mechanicalFraction: Quantity;
  /** Reheat was measured: the credit is in the measurement already. */
  reheatMeasured: boolean;
};

/** C2 of one row, from its C1. */
export function heatRemovalCell(heater: Cell, split: HeatSplit, plant: Plant, currency: string): Cell {
  const { row, electric: heaterKwh } = heater;
  if (!heaterKwh) throw new Error("the heaters' energy comes first");
  const electric = step({
    symbol: "E_2",
    label: `electricity to remove the heaters' heat, ${rowLabel(row)}`,
    unit: "kWh a year",
    formula: `E_2 = E_1 * (${split.cooling.symbol} + ${split.deadband.symbol} * (1 - x_oa)) * m / COP`,
    terms: [heaterKwh, split.cooling, split.deadband, split.outdoorAirFraction, split.mechanicalFraction, plant.cop],
    compute: (kwh, coolingShare, deadbandShare, outdoorAirFraction, mechanicalFraction, cop) =>
      heatRemovalKwh({ heaterKwh: kwh, coolingShare, deadbandShare, outdoorAirFraction, mechanicalFraction, cop }),
  });
  const heat = split.reheatMeasured
    ? null
    : step({
        symbol: "Q_2",
        label: `reheat that the heaters replace, ${rowLabel(row)}`,
        unit: "kWh a year",
        formula: `Q_2 = -E_1 * ${split.reheat.symbol} / η`,
        terms: [heaterKwh, split.reheat, plant.heatEfficiency],
        compute: (kwh, reheatShare, heatEfficiency) => reheatCreditKwh({ heaterKwh: kwh, reheatShare, heatEfficiency }),
      });
  const notes = split.reheatMeasured
    ? ["Reheat was measured with the heaters in use, so no credit for reheat that they replace is taken."]
    : [];
  const energy = { electric, heat };
  return { row, ...energy, money: costOf("heat-removal", energy, plant, currency, notes) };
}

/** C2 of one row by the screening's published shares, without weather and trends. */
export function screeningHeatRemovalCell(heater: Cell, plant: Plant, currency: string): Cell {
  const removed = plant.assumed.shared("heater-heat-removed-fraction", "f_c");
  const none = (symbol: string, label: string, value: number): Quantity =>
    exact({ symbol, label, unit: "", value, origin: "computed", source: "held in the share removed" });
  return heatRemovalCell(
    heater,
    {
      cooling: removed,
      deadband: none("w_d", "share at minimum airflow", 0),
      reheat: plant.assumed.shared("heater-heat-useful-fraction", "f_h"),
      outdoorAirFraction: none("x_oa", "share of return air exhausted", 0),
      mechanicalFraction: none("m", "share of cooling that the plant meets", 1),
      reheatMeasured: false,
    },
    plant,
    currency,
  );
}
