"use client";

import { type ReactNode, useMemo } from "react";
import type { TemperatureUnit } from "@/lib/units/format";
import { bothSidesConfig, type SidesAt } from "./both-sides-config";
import { ChartCanvas } from "./chart-canvas";
import type { ChartTheme } from "./chart-theme";

type Props = {
  /** What the picture shows in one sentence. */
  label: string;
  points: readonly SidesAt[];
  /** Unit of the axis. */
  temperatureUnit: TemperatureUnit;
  /** A table of the same numbers. */
  children: ReactNode;
};

/** Shares who want it warmer and cooler against zone air temperature, over the desk-hours spent at it. */
export function BothSidesChart({ label, points, temperatureUnit, children }: Props) {
  const configure = useMemo(
    () => (theme: ChartTheme) => bothSidesConfig(points, theme, temperatureUnit),
    [points, temperatureUnit],
  );
  return (
    <ChartCanvas label={label} configure={configure}>
      {children}
    </ChartCanvas>
  );
}
