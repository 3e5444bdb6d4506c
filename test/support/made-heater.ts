import { zoneTable } from "@/lib/time/zone-table";
import { coolingSeasonMask } from "@/lib/trends/cooling-season";
import type { ZoneEvidence } from "@/lib/trends/diagnosis/zone-evidence";
import { type HeatedZone, type HeaterJumps, heaterJumps } from "@/lib/trends/heater-jumps";
import { localWeekHours } from "@/lib/trends/local-week-hours";
import type { ZoneGrids } from "@/lib/trends/zone-grids";
import { scenarioEvidence, scenarioGrids } from "./zone-scenario";

/** The reading jumps by `jumpK` at 11:00 on weekdays for two hours; the box answers with `answerM3ps` more, unless that is 0. */
export function jumping(jumpK: number, answerM3ps: number): ZoneGrids {
  return scenarioGrids(({ hour }) =>
    hour >= 11 && hour < 13
      ? { zoneAirTempC: 23.3 + jumpK, airflowM3ps: 0.25 + (hour >= 11.25 ? answerM3ps : 0) }
      : { zoneAirTempC: 23.3 },
  );
}

/** Nothing happens. */
export const STILL = scenarioGrids(() => ({}));

/** What is found of jumps in a zone with these grids, among three that stand still or do as `neighbours` do. */
export function jumpsOf(
  grids: ZoneGrids,
  more: { heaterPowerW?: Float64Array; neighbours?: ZoneGrids } = {},
): HeaterJumps | null {
  const grouped = (zoneId: number, of: ZoneGrids, heaterPowerW: Float64Array | null = null): HeatedZone => ({
    zoneId,
    floor: "2",
    grids: of,
    minimumAirflowM3ps: 0.1,
    season: coolingSeasonMask(of, 13),
    heaterPowerW,
  });
  const others = [1, 2, 3].map((id) => grouped(id, more.neighbours ?? STILL));
  const weekHours = localWeekHours(grids.grid, zoneTable("UTC"));
  return heaterJumps([grouped(7, grids, more.heaterPowerW), ...others], weekHours).get(7) ?? null;
}

/** A zone with one heater on the register. */
export const withHeater = (
  grids: ZoneGrids,
  jumps: HeaterJumps | null,
  more: Partial<ZoneEvidence> = {},
): ZoneEvidence => scenarioEvidence(grids, { heaterCount: 1, heaterHoursPerYear: 600, heaterJumps: jumps, ...more });

/** 1500 W from 11:00 to 13:00 on days on which the reading jumps, by the heater's own meter. */
export const meter = (grids: ZoneGrids, onFrom: number): Float64Array =>
  Float64Array.from({ length: grids.grid.count }, (_, i) => {
    const hour = (i % 96) / 4;
    return grids.occupied[i] === 1 && hour >= onFrom && hour < onFrom + 2 ? 1500 : 0;
  });
