"use client";

import { type ReactNode, useMemo } from "react";
import type { TemperatureUnit } from "@/lib/units/format";
import { ChartCanvas } from "./chart-canvas";
import type { ChartTheme } from "./chart-theme";
import { ZoneChartKey } from "./zone-chart-key";
import type { ZoneSeries } from "./zone-series";
import { zoneTimeConfig } from "./zone-time-config";

type Props = {
  /** What the picture shows in one sentence, with the zone and the dates. */
  label: string;
  series: ZoneSeries;
  /** Unit of the axis. */
  temperatureUnit: TemperatureUnit;
  /** A table of the same numbers. */
  children: ReactNode;
};

/** A zone over time: air, setpoints, comfort range, states, heaters and reports on one axis. */
export function ZoneTimeChart({ label, series, temperatureUnit, children }: Props) {
  const configure = useMemo(
    () => (theme: ChartTheme) => zoneTimeConfig(series, theme, temperatureUnit),
    [series, temperatureUnit],
  );
  return (
    <div>
      <ZoneChartKey series={series} />
      <ChartCanvas label={label} configure={configure}>
        {children}
      </ChartCanvas>
    </div>
  );
}
