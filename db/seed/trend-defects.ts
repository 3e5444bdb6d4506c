import type { PointKind } from "@/lib/trends/point-kind";
import { startOfLocalDate } from "./demo-calendar";

/** What went wrong with the recording, not with the building. Times are UTC seconds, the end not included. */
type Span = { from: number; to: number };

const hour = 3600;
const day = 86_400;

/** The trend server stood still overnight: no point has samples. */
const SERVER_DOWN: Span = {
  from: startOfLocalDate("2026-02-11") + 22 * hour,
  to: startOfLocalDate("2026-02-12") + 9.5 * hour,
};

/** A zone's controller was off the network: its points have no samples. */
const CONTROLLER_AWAY: Record<string, Span> = {
  "1-11": { from: startOfLocalDate("2026-07-13") + 8 * hour, to: startOfLocalDate("2026-07-16") + 14 * hour },
  "3-04": { from: startOfLocalDate("2025-12-08") + 11 * hour, to: startOfLocalDate("2025-12-09") + 10 * hour },
};

/** The recorded zone air temperature stands still for a week; the controller itself reads on. */
export const STUCK_SENSOR = {
  zoneCode: "2-07",
  kind: "zone-air-temp" as PointKind,
  from: startOfLocalDate("2026-06-08"),
  to: startOfLocalDate("2026-06-08") + 7 * day,
};

/** Share of samples that are lost on their way, one by one. */
export const LOST_SHARE = 0.0008;

const within = (span: Span | undefined, ts: number): boolean => span !== undefined && ts >= span.from && ts < span.to;

/** Whether samples of a point could be recorded at an instant; `zoneCode` is null for a point of the building. */
export function canBeRecorded(zoneCode: string | null, ts: number): boolean {
  return !within(SERVER_DOWN, ts) && !(zoneCode !== null && within(CONTROLLER_AWAY[zoneCode], ts));
}

export function isStuck(zoneCode: string | null, kind: PointKind, ts: number): boolean {
  return zoneCode === STUCK_SENSOR.zoneCode && kind === STUCK_SENSOR.kind && within(STUCK_SENSOR, ts);
}
