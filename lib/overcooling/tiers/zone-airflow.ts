import type { VavSystemType } from "@/lib/assumptions/system-type";
import { exact, type Input, type Quantity, type Step, step } from "../calculation/quantity";
import { rowLabel } from "../component-model";
import type { Plant } from "../plant";
import type { Row } from "../rows";
import { excessAirflow, needed, warmedZoneTemp } from "./airflow-steps";
import type { PricedState, StateYear } from "./zone-states";

/** Airflows of one measured VAV zone. */
export type ZoneAirflow = {
  design: Quantity;
  minimum: Quantity;
  warmed: Step;
  excess: Step;
  /** Air moved in a year's season hours, and the part of it that a zone at the target does not need [m³/s·h]. */
  moved: Step;
  notNeeded: Step;
  /** Of it what is moved while the zone cools [m³/s·h]. */
  notNeededCooling: Step;
};

export function zoneAirflow(
  row: Row,
  states: Record<PricedState, StateYear>,
  system: VavSystemType,
  plant: Plant,
): ZoneAirflow {
  const of = `, ${rowLabel(row)}`;
  const { assumed } = plant;
  const design = designAirflow(row, plant);
  const minimum = minimumAirflow(row, design, system, plant);
  const required = step({
    symbol: "V_req",
    label: `required airflow${of}`,
    unit: "m³/s",
    formula: "V_req = r_req * V_des",
    terms: [assumed.shared("required-airflow-fraction", "r_req"), design],
    compute: (fraction, each) => fraction * each,
  });
  const coolingAirflow = airflowWhileCooling(row, design, plant);
  const { cooling, deadband, reheat } = states;
  const warmed = warmedZoneTemp(deadband.zoneAirTemp, minimum, required, plant, of);
  const excess = excessAirflow(minimum, required, of);
  const coolingNeeded = needed(
    {
      airflow: coolingAirflow,
      required,
      zoneTemp: cooling.zoneAirTemp,
      warmTemp: plant.targetTemp,
      symbol: "V_c1",
      label: `airflow while cooling that the target needs${of}`,
    },
    plant,
  );
  const deadbandNeeded = needed(
    {
      airflow: minimum,
      required,
      zoneTemp: deadband.zoneAirTemp,
      warmTemp: warmed,
      symbol: "V_d1",
      label: `airflow between the setpoints that is needed${of}`,
    },
    plant,
  );
  return {
    design,
    minimum,
    warmed,
    excess,
    moved: step({
      symbol: "F_z",
      label: `air moved in the season${of}`,
      unit: "m³/s·h",
      formula: "F_z = H_c * V_c + (H_d + H_r) * V_min",
      terms: [cooling.hours, coolingAirflow, deadband.hours, reheat.hours, minimum],
      compute: (coolingHours, cool, deadbandHours, reheatHours, least) =>
        coolingHours * cool + (deadbandHours + reheatHours) * least,
    }),
    notNeeded: step({
      symbol: "X_z",
      label: `air moved in the season that is not needed${of}`,
      unit: "m³/s·h",
      formula: "X_z = B_c * (V_c - V_c1) + B_d * (V_min - V_d1) + H_r * V_ex",
      terms: [
        cooling.hoursBelow,
        coolingAirflow,
        coolingNeeded,
        deadband.hoursBelow,
        minimum,
        deadbandNeeded,
        reheat.hours,
        excess,
      ],
      compute: (coolingHours, cool, coolLess, deadbandHours, least, less, reheatHours, above) =>
        coolingHours * (cool - coolLess) + deadbandHours * (least - less) + reheatHours * above,
    }),
    notNeededCooling: step({
      symbol: "X_zc",
      label: `air moved while cooling that is not needed${of}`,
      unit: "m³/s·h",
      formula: "X_zc = B_c * (V_c - V_c1)",
      terms: [cooling.hoursBelow, coolingAirflow, coolingNeeded],
      compute: (hours, cool, less) => hours * (cool - less),
    }),
  };
}

const recorded = (row: Row, symbol: string, label: string, value: number, origin: Input["origin"]): Input =>
  exact({
    symbol,
    label: `${label}, ${rowLabel(row)}`,
    unit: "m³/s",
    value,
    origin,
    source: origin === "measured" ? "airflow trend" : "zone record",
    href: `/zones/${row.zoneId}`,
  });

function designAirflow(row: Row, plant: Plant): Quantity {
  const own = row.zone?.designAirflowM3ps ?? null;
  if (own !== null) return recorded(row, "V_des", "design airflow", own, "entered");
  return step({
    symbol: "V_des",
    label: `design airflow, ${rowLabel(row)}`,
    unit: "m³/s",
    formula: "V_des = v * A_z",
    terms: [
      plant.assumed.shared("design-airflow-per-area", "v"),
      exact({ symbol: "A_z", label: "floor area", unit: "m²", value: row.floorAreaM2, origin: row.areaOrigin }),
    ],
    compute: (perArea, area) => perArea * area,
  });
}

function minimumAirflow(row: Row, design: Quantity, system: VavSystemType, plant: Plant): Quantity {
  const { assumed } = plant;
  const shared = { symbol: "V_min", label: `minimum airflow, ${rowLabel(row)}`, unit: "m³/s" };
  const own = row.zone?.minimumAirflowM3ps ?? null;
  if (own === null) {
    return step({
      ...shared,
      formula: "V_min = r_min * V_des",
      terms: [assumed.shared(`minimum-airflow-fraction/${system}`, "r_min"), design],
      compute: (fraction, each) => fraction * each,
    });
  }
  const estimated = row.zone?.minimumAirflowOrigin === "estimated";
  const id = estimated ? "estimated-minimum-airflow-error-factor" : "minimum-airflow-error-factor";
  const origin = row.zone?.minimumAirflowOrigin === "entered" ? "entered" : "measured";
  return step({
    ...shared,
    formula: "V_min = k_v * V_m",
    terms: [
      assumed.apart(id, "k_v", row.code),
      recorded(row, "V_m", estimated ? "minimum airflow, read off the trend" : "minimum airflow", own, origin),
    ],
    compute: (factor, each) => factor * each,
  });
}

function airflowWhileCooling(row: Row, design: Quantity, plant: Plant): Quantity {
  const mean = row.record?.exposure?.byState.cooling.meanAirflowM3ps ?? null;
  if (mean !== null) return recorded(row, "V_c", "mean airflow while cooling", mean, "measured");
  return step({
    symbol: "V_c",
    label: `mean airflow while cooling, ${rowLabel(row)}`,
    unit: "m³/s",
    formula: "V_c = r_c * V_des",
    terms: [plant.assumed.shared("cooling-airflow-fraction", "r_c"), design],
    compute: (fraction, each) => fraction * each,
  });
}
