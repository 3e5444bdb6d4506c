import type { Assumption, AssumptionSource } from "./assumption";
import { entry } from "./entry";
import { SYSTEM_LABELS, SYSTEM_TYPES, type SystemType } from "./system-type";

const SINGLE_ZONE = [3, 6, 10] as const;
const PERCENT: Record<SystemType, readonly [low: number, value: number, high: number]> = {
  "vav-reheat-high-minimum": [0, 2, 4],
  "vav-reheat-low-minimum": [4, 8, 12],
  "vav-reheat-minimum-unknown": [0, 4, 10],
  "single-zone-dx": SINGLE_ZONE,
  "fan-coil": SINGLE_ZONE,
  "heat-pump": SINGLE_ZONE,
};

const SETPOINT_STUDIES: AssumptionSource = {
  title:
    "Judgement bracketing published simulations of setpoints: Hoyt, Arens and Zhang 2015 (10 % a kelvin at low minimums, little at high ones) and others",
  place: "low half of the span in hot humid climates, high half in mild marine ones",
  year: 2015,
  url: "https://doi.org/10.1016/j.buildenv.2014.09.010",
  confidence: "judgement",
};

const CBECS: AssumptionSource = {
  title: "EIA Commercial Buildings Energy Consumption Survey, table E4, office",
  place: "cooling 8.3 and ventilation 5.2 kBtu/ft²; halved and doubled for the span",
  year: 2003,
  confidence: "published",
};

/** What the screening rests on: a percentage a kelvin of the energy of an average office. */
export const SCREENING_ASSUMPTIONS: readonly Assumption[] = [
  ...SYSTEM_TYPES.map((system) =>
    entry({
      id: `setpoint-percent-per-kelvin/${system}`,
      label: `cooling and fan energy saved by each kelvin of cooling setpoint, ${SYSTEM_LABELS[system]}`,
      low: PERCENT[system][0],
      value: PERCENT[system][1],
      high: PERCENT[system][2],
      unit: "% per K",
      source: SETPOINT_STUDIES,
      appliesTo: "screening only; stands for setpoint, minimum airflow and fan together",
    }),
  ),
  entry({
    id: "cooling-end-use-intensity",
    label: "electricity for cooling, per floor area and year",
    value: 26.2,
    low: 13.1,
    high: 52.4,
    unit: "kWh/m²",
    source: CBECS,
    appliesTo: "screening; bound of the estimate",
  }),
  entry({
    id: "ventilation-end-use-intensity",
    label: "electricity for fans, per floor area and year",
    value: 16.4,
    low: 8.2,
    high: 32.8,
    unit: "kWh/m²",
    source: CBECS,
    appliesTo: "screening; bound of the estimate",
  }),
];
