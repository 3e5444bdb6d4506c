/** What can be changed in a zone. The amount of each is a number of its own unit, counted in the direction that saves. */
export const LEVERS = [
  "cooling-setpoint",
  "heating-setpoint",
  "minimum-airflow",
  "supply-air-temp",
  "schedule",
  "fault-fix",
  "personal-device",
] as const;
export type Lever = (typeof LEVERS)[number];

export type LeverScale = { label: string; amount: string; unit: string; least: number; most: number; step: number };

/** Words and scale of each lever. Spans are common practice, no source: beyond them a proposal is a redesign. */
export const LEVER_SCALES: Record<Lever, LeverScale> = {
  "cooling-setpoint": {
    label: "Cooling setpoint",
    amount: "raised by",
    unit: "K",
    least: 0,
    most: 4,
    step: 0.1,
  },
  "heating-setpoint": {
    label: "Heating setpoint",
    amount: "lowered by",
    unit: "K",
    least: 0,
    most: 3,
    step: 0.1,
  },
  "minimum-airflow": {
    label: "Minimum airflow",
    amount: "lowered by, of the present minimum",
    unit: "%",
    least: 0,
    most: 80,
    step: 5,
  },
  "supply-air-temp": {
    label: "Supply air temperature reset",
    amount: "raised outside cooling by",
    unit: "K",
    least: 0,
    most: 4,
    step: 0.5,
  },
  schedule: {
    label: "Schedule",
    amount: "shorter a day by",
    unit: "h",
    least: 0,
    most: 4,
    step: 0.25,
  },
  "fault-fix": { label: "Fix a fault", amount: "faults fixed", unit: "", least: 0, most: 1, step: 1 },
  "personal-device": {
    label: "Personal foot warmer instead",
    amount: "heaters replaced, of those there",
    unit: "%",
    least: 0,
    most: 100,
    step: 10,
  },
};

/** One lever of one zone. `amount` is in the unit of `LEVER_SCALES`. */
export type ZoneLever = { zoneId: number; lever: Lever; amount: number };
