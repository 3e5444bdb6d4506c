import { isVav, type SystemType } from "@/lib/assumptions/system-type";
import { exact, type Quantity, type Step, step } from "../calculation/quantity";
import { rowLabel } from "../component-model";
import { measuredSetpointKwh } from "../components/setpoint";
import type { Plant, PlantWeather } from "../plant";
import type { Row } from "../rows";
import { withOwnTarget } from "../zone-target";
import { deadbandElectricity, reheatEnergy } from "./airflow-steps";
import { zoneHeatLoss } from "./heat-loss";
import { type ZoneAirflow, zoneAirflow } from "./zone-airflow";
import { type PricedState, type StateYear, zoneStates } from "./zone-states";

/** What a zone's record says in kWh a year. Without variable airflow there is no minimum to lower: no C4 and no C5. */
export type MeasuredZone = {
  row: Row;
  /** A unit serves it alone: what its states call deadband are hours in which the unit stood idle. */
  hasOwnUnit: boolean;
  states: Record<PricedState, StateYear>;
  heatLoss: Step;
  belowTarget: Step;
  /** How much warmer its air would be at the target, over all season hours [K]. */
  rise: Step;
  setpoint: Step;
  deadband: Step | null;
  reheat: { electric: Step; heat: Step } | null;
  airflow: ZoneAirflow | null;
  reheatMeasured: boolean;
};

export function measuredZone(
  row: Row,
  record: NonNullable<Row["record"]>,
  system: SystemType,
  shared: Plant & { weather: PlantWeather },
): MeasuredZone {
  const plant = withOwnTarget(shared, row);
  const of = `, ${rowLabel(row)}`;
  const states = zoneStates(row, record, plant);
  const heatLoss = zoneHeatLoss(row, plant);
  const { mechanicalFraction } = plant.weather;
  const setpoint = step({
    symbol: "E_3",
    label: `cooling electricity for the setpoint below the target${of}`,
    unit: "kWh a year",
    formula: "E_3 = UA_z * D_c * m / COP",
    terms: [heatLoss, states.cooling.overcoolingKh, mechanicalFraction, plant.cop],
    compute: (heatLossKwPerK, overcoolingKh, fraction, cop) =>
      measuredSetpointKwh({ heatLossKwPerK, overcoolingKh, mechanicalFraction: fraction, cop }),
    notes: [
      "First-order identity of the steady heat balance: the setpoint moves the balance temperature one for one, so each degree-hour below the target costs the heat loss coefficient, whatever the gains are.",
    ],
  });
  const hasOwnUnit = isServedByOwnUnit(record);
  const airflow = isVav(system) && !hasOwnUnit ? zoneAirflow(row, states, system, plant) : null;
  return {
    row,
    hasOwnUnit,
    states,
    heatLoss,
    belowTarget: step({
      symbol: "dT",
      label: `mean depth below the target while held by the cooling setpoint${of}`,
      unit: "K",
      formula: "dT = D_c / max(1, B_c)",
      terms: [states.cooling.overcoolingKh, states.cooling.hoursBelow],
      compute: (kh, hours) => kh / Math.max(1, hours),
    }),
    rise: airRise(row, states, airflow),
    setpoint,
    deadband: airflow
      ? deadbandElectricity(
          {
            heatLoss,
            hours: states.deadband.hoursBelow,
            deadbandTemp: states.deadband.zoneAirTemp,
            warmed: airflow.warmed,
            mechanicalFraction,
          },
          plant,
          of,
        )
      : null,
    reheat: airflow
      ? reheatEnergy(
          {
            excess: airflow.excess,
            reheatHours: states.reheat.hours,
            heatingSetpoint: heatingTemp(row, record, plant),
            mechanicalFraction,
          },
          plant,
          of,
        )
      : null,
    airflow,
    reheatMeasured: record.exposure?.hasTrend.reheatValve ?? false,
  };
}

/**
 * Whether a zone's states were read off the compressor or coil valve of a unit of its own, whatever serves the rest of the
 * building: such a unit has no minimum airflow, and idle beyond a cycle it cools nothing.
 */
export const isServedByOwnUnit = ({ exposure }: NonNullable<Row["record"]>): boolean =>
  exposure?.hasTrend.coolingStage ?? false;

/** Reheat is left out: its hours end with less air, and the zone's own temperature does not change by that. */
function airRise(row: Row, { cooling, deadband, reheat }: MeasuredZone["states"], airflow: ZoneAirflow | null): Step {
  const shared = {
    symbol: "dT_z",
    label: `rise of the mean zone air at the target, over the season hours, ${rowLabel(row)}`,
    unit: "K",
  };
  const hours = [cooling.hours, deadband.hours, reheat.hours];
  if (!airflow) {
    return step({
      ...shared,
      formula: "dT_z = D_c / max(1, H_c + H_d + H_r)",
      terms: [cooling.overcoolingKh, ...hours],
      compute: (kh, c, d, r) => kh / Math.max(1, c + d + r),
    });
  }
  return step({
    ...shared,
    formula: "dT_z = (D_c + B_d * max(0, T_w - T_d)) / max(1, H_c + H_d + H_r)",
    terms: [cooling.overcoolingKh, deadband.hoursBelow, airflow.warmed, deadband.zoneAirTemp, ...hours],
    compute: (kh, hoursBelow, warmedC, presentC, c, d, r) =>
      (kh + hoursBelow * Math.max(0, warmedC - presentC)) / Math.max(1, c + d + r),
  });
}

/** Zone air while it reheats: the recorded heating setpoint, else the recorded zone air, else the assumption. */
function heatingTemp(row: Row, record: NonNullable<Row["record"]>, plant: Plant): Quantity {
  const reheat = record.exposure?.byState.reheat;
  const measuredC = reheat?.meanHeatingSetpointC ?? reheat?.meanZoneAirTempC ?? null;
  if (measuredC === null) return plant.assumed.shared("heating-setpoint", "T_hsp");
  return exact({
    symbol: "T_hsp",
    label: `${reheat?.meanHeatingSetpointC == null ? "mean zone air" : "mean heating setpoint"} in reheat, ${rowLabel(row)}`,
    unit: "°C",
    value: measuredC,
    origin: "measured",
    source: "zone trends",
    href: `/zones/${row.zoneId}`,
  });
}
