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
