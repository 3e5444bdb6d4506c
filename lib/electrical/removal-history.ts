import { type DeviceStatus, isInBuilding } from "./device-status";

export type LifeStep = { deviceId: number; status: DeviceStatus; onDate: string };

/** How the devices of a place stood at the end of a day. */
export type RemovalPoint = {
  onDate: string;
  /** Devices that were ever found. */
  found: number;
  present: number;
  /** Devices that are out of the building. */
  out: number;
  /** Share of the found that are out. */
  removalFraction: number;
  /** Devices that were ever removed. */
  everRemoved: number;
  /** Devices that came back after they were removed, and are still there. */
  returned: number;
  /** Devices found for the first time after the first removal. */
  foundAfterRemoval: number;
  /** Returned and found after the first removal, for each device ever removed; null while none was. */
  reboundFraction: number | null;
};

/**
 * Removal fraction and rebound over time: a point for each day on which something happened. A heater that is taken away while the
 * spot stays cold comes back, as itself or as another. Our own definition; steps of one day count in the order given.
 */
export function removalHistory(steps: readonly LifeStep[]): RemovalPoint[] {
  const status = new Map<number, DeviceStatus>();
  const removed = new Set<number>();
  const foundAfter = new Set<number>();
  const points = new Map<string, RemovalPoint>();
  for (const step of [...steps].sort((a, b) => (a.onDate < b.onDate ? -1 : a.onDate > b.onDate ? 1 : 0))) {
    if (!status.has(step.deviceId) && removed.size > 0) foundAfter.add(step.deviceId);
    status.set(step.deviceId, step.status);
    if (step.status === "removed") removed.add(step.deviceId);
    points.set(step.onDate, pointOf(step.onDate, status, removed, foundAfter));
  }
  return [...points.values()];
}

function pointOf(
  onDate: string,
  status: ReadonlyMap<number, DeviceStatus>,
  removed: ReadonlySet<number>,
  foundAfter: ReadonlySet<number>,
): RemovalPoint {
  const present = [...status.values()].filter(isInBuilding).length;
  const returned = [...removed].filter((id) => isInBuilding(status.get(id) ?? "removed")).length;
  const found = status.size;
  return {
    onDate,
    found,
    present,
    out: found - present,
    removalFraction: (found - present) / found,
    everRemoved: removed.size,
    returned,
    foundAfterRemoval: foundAfter.size,
    reboundFraction: removed.size === 0 ? null : (returned + foundAfter.size) / removed.size,
  };
}
