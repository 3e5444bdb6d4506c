import type { Lever, ZoneLever } from "../lever";

/** The amounts of a zone's levers, 0 where one is not used. */
export type LeverAmounts = Record<Lever, number>;

const NONE: LeverAmounts = {
  "cooling-setpoint": 0,
  "heating-setpoint": 0,
  "minimum-airflow": 0,
  "supply-air-temp": 0,
  schedule: 0,
  "fault-fix": 0,
  "personal-device": 0,
};

/** Amounts by zone id. Zones without a lever are not in it. */
export function leversByZone(levers: readonly ZoneLever[]): Map<number, LeverAmounts> {
  const byZone = new Map<number, LeverAmounts>();
  for (const { zoneId, lever, amount } of levers) {
    if (amount === 0) continue;
    byZone.set(zoneId, { ...(byZone.get(zoneId) ?? NONE), [lever]: amount });
  }
  return byZone;
}

export const noLevers: LeverAmounts = NONE;
