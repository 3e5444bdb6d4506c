"use client";

import { type ReactNode, useMemo } from "react";
import type { TemperatureUnit } from "@/lib/units/format";
import { ChartCanvas } from "./chart-canvas";
import type { ChartTheme } from "./chart-theme";
import { type EnergyGroup, energyScatterConfig } from "./energy-scatter-config";

type Props = {
  /** What the picture shows in one sentence. */
  label: string;
  groups: readonly EnergyGroup[];
  /** Unit of the axis. */
  temperatureUnit: TemperatureUnit;
  /** A table of the same numbers. */
  children: ReactNode;
};

/** Energy against outdoor air temperature with the fitted lines. */
export function EnergyScatter({ label, groups, temperatureUnit, children }: Props) {
  const configure = useMemo(
    () => (theme: ChartTheme) => energyScatterConfig(groups, theme, temperatureUnit),
    [groups, temperatureUnit],
  );
  return (
    <ChartCanvas label={label} configure={configure}>
      {children}
    </ChartCanvas>
  );
}
