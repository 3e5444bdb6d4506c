import type { FindingLine } from "@/app/_components/ui/findings-list";
import type { Finding, Severity } from "@/lib/findings/finding";
import { overcoolingFindingWords } from "@/lib/overcooling/findings";
import type { Building } from "@/lib/services/buildings/find";
import type { BuildingDataQuality, ZoneDataQuality } from "@/lib/services/data-quality/read";
import { formatLocal } from "@/lib/time/format";
import { type FindingWords, TREND_FINDING_CODES, trendFindingWords } from "@/lib/trends/findings";
import type { PointKind } from "@/lib/trends/point-kind";
import { consequenceSummary } from "@/lib/trends/quality/consequence-words";
import { isQualityFinding, qualityFindingWords } from "@/lib/trends/quality/findings";
import { type QuantityWords, quantityWords } from "@/lib/trends/quantity-words";

export type Shown = Pick<Building, "temperatureUnit" | "timeZone">;

/** The points that the diagnosis and the cost ask for first. */
export const KEY_POINTS: readonly PointKind[] = ["zone-air-temp", "cooling-setpoint", "airflow", "reheat-valve"];

export const pointWords = (kind: string): string => kind.replaceAll("-", " ").replace(" temp", "");

/** Sentences of a finding from wherever it comes: the quality checks, the analysis, or the cost. */
export function findingWords(finding: Finding, words: QuantityWords): FindingWords {
  if (isQualityFinding(finding)) return qualityFindingWords(finding, words);
  return TREND_FINDING_CODES.includes(finding.code)
    ? trendFindingWords(finding, words)
    : overcoolingFindingWords(finding);
}

export type ZoneQualityLine = {
  id: number;
  code: string;
  floor: string;
  /** Percent of the building's record by key point; "no trend" where there is none. */
  cover: Partial<Record<PointKind, string>>;
  severity: Severity | null;
  worst: string;
  stops: string;
  problems: number;
};

const ORDER: readonly (Severity | null)[] = ["disqualifies", "caution", "note", null];

/** A row for every zone, the gravest problem first; zones without any last, in their own order. */
export function zoneQualityLines({ zones }: Pick<BuildingDataQuality, "zones">): ZoneQualityLine[] {
  return zones
    .map(zoneQualityLine)
    .sort(
      (a, b) =>
        ORDER.indexOf(a.severity) - ORDER.indexOf(b.severity) || b.problems - a.problems || compare(a.code, b.code),
    );
}

const compare = (a: string, b: string): number => a.localeCompare(b, "en", { numeric: true });

function zoneQualityLine({ zone, points, problems }: ZoneDataQuality): ZoneQualityLine {
  const [worst] = problems;
  return {
    id: zone.id,
    code: zone.code,
    floor: zone.floor,
    cover: Object.fromEntries(
      KEY_POINTS.map((kind) => {
        const point = points.find((each) => each.kind === kind);
        return [kind, point ? (100 * point.share).toFixed(1) : "no trend"];
      }),
    ),
    severity: worst?.severity ?? null,
    worst: worst ? problemTitle(worst.finding) : "",
    stops: worst ? consequenceSummary(worst.consequences) : "",
    problems: problems.length,
  };
}

/** A problem in a few words, with the point that it is about. */
export function problemTitle({ code, evidence }: Finding): string {
  const about =
    evidence.point ?? (Array.isArray(evidence.points) && evidence.points.length === 1 ? evidence.points[0] : null);
  const several =
    Array.isArray(evidence.points) && evidence.points.length > 1 ? `${evidence.points.length} points` : null;
  const of = about ? pointWords(String(about)) : several;
  const title = code.replaceAll("-", " ");
  return of ? `${title}: ${of}` : title;
}

/** The page's one sentence: how many zones, how many with what. */
export function dataQualityLede({ zones, record }: BuildingDataQuality, building: Shown): string {
  if (zones.length === 0)
    return "How complete and how believable the trends of each zone are, and what their faults stop.";
  if (!record) return "No zone air temperature is recorded yet, so nothing can be said of any zone.";
  const worst = zones.map(({ problems }) => problems[0]?.severity);
  const count = (severity: Severity | undefined): number => worst.filter((each) => each === severity).length;
  const day = (seconds: number): string => formatLocal(seconds * 1000, building.timeZone, "date");
  const noun = zones.length === 1 ? "zone" : "zones";
  return `${zones.length} ${noun}, recorded ${day(record.fromUtcSeconds)} to ${day(record.toUtcSeconds - 1)}: in ${count("disqualifies")} a fault of the data stops the verdict or the cost, in ${count("caution")} something should be looked at, in ${count("note")} there is a note, ${count(undefined)} have nothing to remark.`;
}

/** What concerns the building as a whole, in words. */
export function buildingFindingLines({ findings }: BuildingDataQuality, building: Shown): FindingLine[] {
  const words = quantityWords(building.temperatureUnit, building.timeZone);
  return findings.map((finding, i) => {
    const { what, action } = findingWords(finding, words);
    return { key: `${finding.code}-${i}`, severity: finding.severity, sentence: what, action };
  });
}
