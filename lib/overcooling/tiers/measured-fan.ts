import { type Quantity, type Step, step, sum } from "../calculation/quantity";
import { rowLabel, rowSymbol, sumOver } from "../component-model";
import { fanKwh } from "../components/fan";
import type { Plant } from "../plant";
import type { Row } from "../rows";
import { powerFraction } from "./airflow-steps";
import type { MeasuredZone } from "./measured-zone";
import type { ZoneAirflow } from "./zone-airflow";

export type MeasuredFan = {
  electric: Step;
  /** Mean airflow of the season, share of design; and the zones' design airflow. */
  airflowFraction: Step;
  design: Quantity;
  shareOf(row: Row): Step | null;
  /** Share of the air that is not needed that is moved while zones cool. */
  whileCooling: Step;
};

type AirZone = MeasuredZone & { airflow: ZoneAirflow };

/**
 * C5 of the measured zones together: the fan serves them all, so its part load follows their summed airflow (reference
 * I). Zones share the saving by the air that each does not need. Null where no zone has variable airflow.
 */
export function measuredFan(zones: readonly MeasuredZone[], plant: Plant): MeasuredFan | null {
  const air = zones.filter((each): each is AirZone => each.airflow !== null);
  const total = (symbol: string, label: string, of: (zone: AirZone) => Quantity): Quantity | null =>
    sumOver(air, of, symbol, label);
  const moved = total("F", "air moved in the season by all measured zones", (each) => each.airflow.moved);
  const notNeeded = total("X", "air moved in the season that is not needed", (each) => each.airflow.notNeeded);
  const design = total("V_des", "design airflow of the measured zones", (each) => each.airflow.design);
  if (!moved || !notNeeded || !design) return null;
  const designHours = sum({
    symbol: "G",
    label: "air that the zones would move at design in the same hours",
    unit: "m³/s·h",
    formula: "G = sum of the zones",
    parts: air.map((each) => ({
      symbol: rowSymbol("G", each.row),
      label: rowLabel(each.row),
      quantity: zoneDesignHours(each),
    })),
  });
  const fraction = (symbol: string, label: string, formula: string, less: Quantity[]): Step =>
    step({
      symbol,
      label,
      unit: "",
      formula,
      terms: [moved, designHours, ...less],
      compute:
        less.length > 0
          ? (all, most, not) => (most > 0 ? (all - not) / most : 0)
          : (all, most) => (most > 0 ? all / most : 0),
    });
  const airflowFraction = fraction("r_0", "mean airflow of the season, share of design", "r_0 = F / G", []);
  const neededFraction = fraction("r_1", "mean airflow that is needed, share of design", "r_1 = (F - X) / G", [
    notNeeded,
  ]);
  const electric = fanElectricity(plant, designHours, airflowFraction, neededFraction);
  const byRow = new Map(air.map((each) => [each.row, each]));
  return {
    electric,
    airflowFraction,
    design,
    whileCooling: step({
      symbol: "x_c",
      label: "share of the air that is not needed that is moved while zones cool",
      unit: "",
      formula: "x_c = X_c / X",
      terms: [
        total(
          "X_c",
          "air moved while zones cool that is not needed",
          (each) => each.airflow.notNeededCooling,
        ) as Quantity,
        notNeeded,
      ],
      compute: (cooling, all) => (all > 0 ? cooling / all : 0),
    }),
    shareOf: (row) => {
      const zone = byRow.get(row);
      if (!zone) return null;
      return step({
        symbol: "x_z",
        label: `share of the air that is not needed, ${rowLabel(row)}`,
        unit: "",
        formula: "x_z = X_z / X",
        terms: [zone.airflow.notNeeded, notNeeded],
        compute: (own, all) => (all > 0 ? own / all : 0),
      });
    },
  };
}

const zoneDesignHours = ({ airflow, states, row }: AirZone): Step =>
  step({
    symbol: "G_z",
    label: `air at design in the season hours, ${rowLabel(row)}`,
    unit: "m³/s·h",
    formula: "G_z = V_des * (H_c + H_d + H_r)",
    terms: [airflow.design, states.cooling.hours, states.deadband.hours, states.reheat.hours],
    compute: (each, cooling, deadband, reheat) => each * (cooling + deadband + reheat),
  });

function fanElectricity(plant: Plant, designHours: Quantity, now: Step, neededFraction: Step): Step {
  return step({
    symbol: "E_5",
    label: "fan electricity for excess air",
    unit: "kWh a year",
    formula: "E_5 = k_f * w_f * G * (f_0 - f_1)",
    terms: [
      plant.assumed.shared("fan-saving-factor", "k_f"),
      plant.assumed.shared("fan-power-per-airflow", "w_f"),
      designHours,
      powerFraction("f_0", now, "share of design power at the present airflow"),
      powerFraction("f_1", neededFraction, "share of design power at the airflow needed"),
    ],
    compute: (factor, kwPerM3ps, airHours, power, neededPower) =>
      fanKwh({
        designPowerKw: factor * kwPerM3ps,
        hours: airHours,
        powerFraction: power,
        neededPowerFraction: neededPower,
      }),
    notes: ["One fan curve for all measured zones together; a zone's part follows the air that it does not need."],
  });
}
