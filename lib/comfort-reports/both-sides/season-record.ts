import { type ExpectedReports, expectedReports, medianReports, type PlannedZone } from "./expected-reports";
import { fitReportModel } from "./fit-report-model";
import type { ReportModel } from "./report-model";
import type { VotePrior } from "./vote-prior";

/** Occupied desk-hours by whole degree of zone air. */
export type DeskHourBins = readonly (readonly [airTempC: number, hours: number])[];

/** Hours and reports of one season in one zone. */
export type SeasonZone = {
  zoneId: number;
  floor: string;
  /** Since the building's first report: what reports are held against. */
  sinceReports: DeskHourBins;
  /** Of the last 365 days of the record: what a year is taken to be. */
  lastYear: DeskHourBins;
  /** Person-days that wanted it warmer and cooler, by whole degree. */
  counts: readonly (readonly [airTempC: number, tooCold: number, tooWarm: number])[];
  /** The least number of people who sent the zone's reports of any season; absent in records made before 2026-11-30. */
  people?: number;
};

/** What a building's reports and hours of one season say, before any model: plain numbers, fit for the browser. */
export type SeasonRecord = { zones: readonly SeasonZone[]; prior: VotePrior };

/** How a zone's air is moved: by `riseK` in a share of its desk-hours, not at all in the rest. */
export type MovedAir = { riseK: number; share: number };

const fitted = new WeakMap<SeasonRecord, ReportModel>();

/** The model of a season, fitted to the building's own hours and reports; fitted once for each record. */
export function seasonModel(record: SeasonRecord): ReportModel {
  const known = fitted.get(record);
  if (known) return known;
  const zones = record.zones.map(({ zoneId, floor, sinceReports, counts }) => {
    const byTemp = new Map(counts.map(([airTempC, tooCold, tooWarm]) => [airTempC, { tooCold, tooWarm }]));
    const bins = sinceReports.map(([airTempC, deskHours]) => {
      const { tooCold = 0, tooWarm = 0 } = byTemp.get(airTempC) ?? {};
      return { airTempC, deskHours, tooCold, tooWarm };
    });
    return { zone: String(zoneId), floor, bins };
  });
  const model = fitReportModel(zones, record.prior);
  fitted.set(record, model);
  return model;
}

/** A year's desk-hours of zones after their air was moved; null leaves a zone out. */
function plannedZones(record: SeasonRecord, movedOf: (zoneId: number) => MovedAir | null): PlannedZone[] {
  return record.zones.flatMap(({ zoneId, lastYear }) => {
    const moved = movedOf(zoneId);
    if (!moved) return [];
    const { riseK, share } = moved;
    const bins = lastYear.flatMap(([airTempC, hours]) =>
      [
        { airTempC: airTempC + riseK, deskHours: share * hours },
        { airTempC, deskHours: (1 - share) * hours },
      ].filter(({ deskHours }) => deskHours > 0),
    );
    return [{ zone: String(zoneId), bins }];
  });
}

/**
 * Reports of a year's season that are to be expected when the air of zones is moved: one calculation for the picture of a
 * proposal and for the page of both sides. `movedOf` is asked for every zone of the record; null leaves a zone out.
 */
export const expectedOfSeason = (record: SeasonRecord, movedOf: (zoneId: number) => MovedAir | null): ExpectedReports =>
  expectedReports([{ model: seasonModel(record), zones: plannedZones(record, movedOf) }]);

/** The medians of the same alone. */
export const mediansOfSeason = (
  record: SeasonRecord,
  movedOf: (zoneId: number) => MovedAir | null,
): { tooCold: number; tooWarm: number } => medianReports(seasonModel(record), plannedZones(record, movedOf));
