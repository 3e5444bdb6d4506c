export type DutyFromSeries =
  | { status: "ok"; dutyFraction: number; meanOnPowerW: number; energyKwh: number }
  | { status: "refused"; code: "no-samples"; message: string };

/**
 * Duty of a setting from evenly spaced plug-meter samples within the window in which it was selected: share of
 * samples above `thresholdW` (10 % of the setting's power is usual). Energy is the mean of all samples times the
 * window, never on-power times duty of a nameplate.
 */
export function dutyFromSeries(series: {
  powerW: ArrayLike<number>;
  intervalMinutes: number;
  thresholdW: number;
}): DutyFromSeries {
  const count = series.powerW.length;
  if (count === 0) {
    return {
      status: "refused",
      code: "no-samples",
      message:
        "The plug-in meter's file has no samples in this window. Choose a window in which the device was in use.",
    };
  }
  let on = 0;
  let onSumW = 0;
  let sumW = 0;
  for (let i = 0; i < count; i++) {
    const each = series.powerW[i] as number;
    sumW += each;
    if (each <= series.thresholdW) continue;
    on += 1;
    onSumW += each;
  }
  return {
    status: "ok",
    dutyFraction: on / count,
    meanOnPowerW: on === 0 ? 0 : onSumW / on,
    energyKwh: (sumW * series.intervalMinutes) / 60 / 1000,
  };
}
