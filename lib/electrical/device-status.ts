/**
 * Where a device is in its life. One neutral status stands for every ground on which a device may stay: the ground itself
 * is kept outside of the register.
 */
export const DEVICE_STATUSES = [
  "found",
  "under-review",
  "approved-to-remain",
  "to-be-removed",
  "removed",
  "returned",
] as const;
export type DeviceStatus = (typeof DEVICE_STATUSES)[number];

const LABELS: Record<DeviceStatus, string> = {
  found: "found",
  "under-review": "under review",
  "approved-to-remain": "approved to remain",
  "to-be-removed": "to be removed",
  removed: "removed",
  returned: "returned at re-survey",
};

export const statusLabel = (status: DeviceStatus): string => LABELS[status];

/** A removed device is not in the building; any other is. */
export const isInBuilding = (status: DeviceStatus): boolean => status !== "removed";

const NEXT: Record<DeviceStatus, readonly DeviceStatus[]> = {
  found: ["under-review", "approved-to-remain", "to-be-removed", "removed"],
  "under-review": ["approved-to-remain", "to-be-removed", "removed"],
  "approved-to-remain": ["under-review", "to-be-removed", "removed"],
  "to-be-removed": ["under-review", "approved-to-remain", "removed"],
  removed: ["returned"],
  returned: ["under-review", "approved-to-remain", "to-be-removed", "removed"],
};

/** Steps that may follow: only what was removed can return. */
export const nextStatuses = (status: DeviceStatus): readonly DeviceStatus[] => NEXT[status];
