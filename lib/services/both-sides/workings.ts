import type { PlannedZone } from "@/lib/comfort-reports/both-sides/expected-reports";
import type { ReportModel } from "@/lib/comfort-reports/both-sides/report-model";
import { seasonModel } from "@/lib/comfort-reports/both-sides/season-record";
import { expectedWorking, shareWorking } from "@/lib/comfort-reports/both-sides/sides-working";
import { VOTES_REACH } from "@/lib/comfort-reports/both-sides/vote-prior";
import { type Share, wantedShares } from "@/lib/comfort-reports/both-sides/wanted-shares";
import type { Working } from "@/lib/working/working";
import { type BothSides, coolingSeasonOf, type SideStep } from "./expect";

type Sides = NonNullable<BothSides>;

/** The figures of one step of the zone air, as addresses name them. */
export const SIDE_FIGURES = ["too-cold", "too-warm", "want-warmer", "want-cooler"] as const;
export type SideFigure = (typeof SIDE_FIGURES)[number];
export type SideWorkings = Record<SideFigure, Working>;

/** A model of the cooling season and the year's desk-hours that it is asked for. */
function seasonOf({ record }: Sides): { model: ReportModel; year: PlannedZone[] } {
  const season = coolingSeasonOf(record);
  return {
    model: seasonModel(season),
    year: season.zones.map(({ zoneId, lastYear }) => ({
      zone: String(zoneId),
      bins: lastYear.map(([airTempC, deskHours]) => ({ airTempC, deskHours })),
    })),
  };
}

/** How every figure of each step came about, in the order of the steps. */
export function sideWorkings(sides: Sides): SideWorkings[] {
  const { model, year } = seasonOf(sides);
  return sides.steps.map((step) => workingsOf(model, year, step));
}

function workingsOf(model: ReportModel, year: PlannedZone[], step: SideStep): SideWorkings {
  const { shiftK, meanAirTempC: airTempC, expected, warmer, cooler } = step;
  return {
    "too-cold": expectedWorking(model, year, { side: 0, shiftK, expected: expected.tooCold }),
    "too-warm": expectedWorking(model, year, { side: 1, shiftK, expected: expected.tooWarm }),
    "want-warmer": shareWorking(model, { side: 0, airTempC, share: warmer }),
    "want-cooler": shareWorking(model, { side: 1, airTempC, share: cooler }),
  };
}

/** Shares who want it warmer and cooler at one zone air temperature, and the year's desk-hours about it. */
export type SharesAt = { airTempC: number; warmer: Share; cooler: Share; deskHours: number };

/** Both shares at every whole degree that the field votes reach, with the desk-hours of the year's cooling season there. */
export function sharesByAir(sides: Sides): SharesAt[] {
  const { model, year } = seasonOf(sides);
  const hours = new Map<number, number>();
  for (const { bins } of year)
    for (const { airTempC, deskHours } of bins) hours.set(airTempC, (hours.get(airTempC) ?? 0) + deskHours);
  const degrees = Array.from(
    { length: VOTES_REACH.highC - VOTES_REACH.lowC + 1 },
    (_, i): number => VOTES_REACH.lowC + i,
  );
  return degrees.map((airTempC) => ({
    airTempC,
    ...wantedShares(model, airTempC),
    deskHours: hours.get(airTempC) ?? 0,
  }));
}
