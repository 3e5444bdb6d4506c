import { OCCUPIED_STATES } from "@/lib/trends/zone-state";
import { exact, type Quantity, type Step, step } from "../calculation/quantity";
import { rowLabel } from "../component-model";
import type { Plant } from "../plant";
import type { Row } from "../rows";

export type PricedState = "cooling" | "deadband" | "reheat";

/** A measured zone's year in one state. */
export type StateYear = {
  hours: Quantity;
  /** Hours with zone air below the target. */
  hoursBelow: Quantity;
  /** Degree-hours below the target, with the sensor's offset taken off. */
  overcoolingKh: Step;
  /** Zone air in the hours below the target. */
  zoneAirTemp: Step;
  /** Share of the zone's season hours. */
  share: Step;
};

const WORDS: Record<PricedState, { sub: string; words: string }> = {
  cooling: { sub: "c", words: "held by the cooling setpoint" },
  deadband: { sub: "d", words: "between the setpoints at minimum airflow" },
  reheat: { sub: "r", words: "in reheat" },
};

/**
 * A zone's annual hours and degree-hours by state. Hours whose state could not be told are split by the assumed shares;
 * hours of a fault are in none. The sensor's offset moves the degree-hours by itself times the hours below the target
 * (first order; never below 0).
 */
export function zoneStates(row: Row, record: NonNullable<Row["record"]>, plant: Plant): Record<PricedState, StateYear> {
  const { annual, exposure } = record;
  const below = Object.fromEntries(
    OCCUPIED_STATES.map((state) => {
      const seen = exposure?.byState[state];
      const { hours, overcoolingKh } = annual.byState[state];
      const fraction = seen && seen.hours > 0 ? seen.hoursBelowTarget / seen.hours : 0;
      return [state, fraction > 0 ? hours * fraction : overcoolingKh > 0 ? hours : 0];
    }),
  );
  const measured = (symbol: string, label: string, unit: string, value: number): Quantity =>
    exact({
      symbol,
      label: `${label}, ${rowLabel(row)}`,
      unit,
      value,
      origin: "measured",
      source: "zone trends carried to the weather year",
      href: `/zones/${row.zoneId}`,
    });
  const offset = plant.assumed.apart("zone-sensor-offset", "δ", row.code);
  const allHours = measured(
    "H_z",
    "occupied season hours without those of a fault",
    "h",
    (["cooling", "deadband", "reheat", "undetermined"] as const).reduce((sum, s) => sum + annual.byState[s].hours, 0),
  );

  const year = (state: PricedState): StateYear => {
    const { sub, words } = WORDS[state];
    const split = (base: string, label: string, unit: string, own: number, undetermined: number): Quantity => {
      const symbol = `${base}_${sub}`;
      if (undetermined === 0) return measured(symbol, `${label} ${words}`, unit, own);
      const share = plant.stateShare[state];
      return step({
        symbol,
        label: `${label} ${words}, ${rowLabel(row)}`,
        unit,
        formula: `${symbol} = ${base}_m + ${share.symbol} * ${base}_u`,
        terms: [
          measured(`${base}_m`, `${label} ${words}, as recorded`, unit, own),
          share,
          measured(`${base}_u`, `${label} in a state that the trends do not tell`, unit, undetermined),
        ],
        compute: (told, part, untold) => told + part * untold,
      });
    };
    const { byState } = annual;
    const hours = split("H", "season hours", "h", byState[state].hours, byState.undetermined.hours);
    const hoursBelow = split("B", "hours below the target", "h", below[state] ?? 0, below.undetermined ?? 0);
    const recordedKh = split(
      "O",
      "degree-hours below the target",
      "K·h",
      byState[state].overcoolingKh,
      byState.undetermined.overcoolingKh,
    );
    const overcoolingKh = step({
      symbol: `D_${sub}`,
      label: `degree-hours below the target ${words}, sensor's offset taken off, ${rowLabel(row)}`,
      unit: "K·h",
      formula: `D_${sub} = max(0, O_${sub} - δ * B_${sub})`,
      terms: [recordedKh, offset, hoursBelow],
      compute: (kh, offsetK, h) => Math.max(0, kh - offsetK * h),
    });
    return {
      hours,
      hoursBelow,
      overcoolingKh,
      zoneAirTemp: step({
        symbol: `T_${sub}`,
        label: `mean zone air in the hours below the target ${words}, ${rowLabel(row)}`,
        unit: "°C",
        formula: `T_${sub} = T_t - D_${sub} / max(1, B_${sub})`,
        terms: [plant.targetTemp, overcoolingKh, hoursBelow],
        compute: (targetC, kh, h) => targetC - kh / Math.max(1, h),
      }),
      share: step({
        symbol: `w_${sub}`,
        label: `share of the season hours ${words}, ${rowLabel(row)}`,
        unit: "",
        formula: `w_${sub} = H_${sub} / H_z`,
        terms: [hours, allHours],
        compute: (part, all) => (all > 0 ? part / all : 0),
      }),
    };
  };
  return { cooling: year("cooling"), deadband: year("deadband"), reheat: year("reheat") };
}
