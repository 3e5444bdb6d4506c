import type { FindingLine } from "@/app/_components/ui/findings-list";
import { countOrMerged } from "@/lib/comfort-reports/disclosure/disclosure-words";
import { allocateRounded } from "@/lib/money/allocate";
import type { Building } from "@/lib/services/buildings/find";
import type { CostOfOvercooling } from "@/lib/services/overcooling/assess";
import type { ZonesOverview } from "@/lib/services/zones/shown";
import { formatLocal } from "@/lib/time/format";
import type { Verdict } from "@/lib/trends/diagnosis/diagnose-zone";
import { VERDICT_WORDS } from "@/lib/trends/diagnosis/verdict-words";
import { trendFindingWords } from "@/lib/trends/findings";
import { quantityWords } from "@/lib/trends/quantity-words";
import { formatNumber, formatTemperature } from "@/lib/units/format";
import type { Range80 } from "@/lib/working/working";

export type Assessed = Extract<CostOfOvercooling["assessment"], { status: "ok" }>;
export type ComponentLine = {
  id: string;
  label: string;
  electricKwh: string;
  heatKwh: string;
  /** Whole units of money; add up to the totals. */
  stated: number;
  contribution: number;
  p10: number;
  p90: number;
  working: Assessed["components"][number]["working"];
};

/** Amounts without their minor unit: the figures are not known better. */
export const whole = (amount: number): string => formatNumber(Math.round(amount), { decimals: 0 });

const kwh = (value: number | null): string => (value === null ? "" : formatNumber(value, { decimals: 0 }));

/** Components whose printed figures add up to the printed totals: remainders of rounding are handed out. */
export function componentLines(assessed: Assessed): { lines: ComponentLine[]; stated: number; p50: number } {
  const { components, headline, statedTotal } = assessed;
  const stated = allocateRounded(
    components.map((each) => each.statedValue),
    statedTotal,
  );
  const contributions = allocateRounded(
    components.map((each) => each.contribution),
    headline.p50,
  );
  const lines = components.map((each, i) => ({
    id: each.id,
    label: each.label,
    electricKwh: kwh(each.electricKwh),
    heatKwh: kwh(each.heatKwh),
    stated: stated[i] as number,
    contribution: contributions[i] as number,
    p10: Math.round(each.p10),
    p90: Math.round(each.p90),
    working: each.working,
  }));
  return { lines, stated: sum(stated), p50: sum(contributions) };
}

/** True where two 80 % ranges do not meet: one of the methods, or of their inputs, must be wrong. */
export const isApart = (a: Range80, b: Range80): boolean => a.p10 > b.p90 || a.p90 < b.p10;

/** Parts of the headline for one bar: the four largest and the rest together; credits have no length. */
export function barParts(lines: readonly ComponentLine[]): { label: string; value: number }[] {
  const positive = lines.filter((line) => line.contribution > 0).sort((a, b) => b.contribution - a.contribution);
  const parts = positive.slice(0, 4).map(({ label, contribution }) => ({ label, value: contribution }));
  const rest = sum(positive.slice(4).map((line) => line.contribution));
  return rest > 0 ? [...parts, { label: "everything else", value: rest }] : parts;
}

export type ZoneCostLine = {
  key: string;
  zoneId: number | null;
  code: string;
  stated: number;
  contribution: number;
  p10: number;
  p90: number;
  belowPct: string;
  mean: string;
  heaters: number;
  coldReports: string;
  verdict: Verdict | null;
  working: Assessed["zones"][number]["working"];
};

/** Zones by what they cost, dearest first; printed figures add up to the printed totals. */
export function zoneCostLines(
  assessed: Assessed,
  overview: ZonesOverview,
  building: Pick<Building, "temperatureUnit">,
  belowTargetPct: (zone: ZonesOverview["zones"][number]) => string,
): { lines: ZoneCostLine[]; stated: number; p50: number } {
  const { zones, headline, statedTotal } = assessed;
  const stated = allocateRounded(
    zones.map((each) => each.statedValue),
    statedTotal,
  );
  const contributions = allocateRounded(
    zones.map((each) => each.contribution),
    headline.p50,
  );
  const known = new Map(overview.zones.map((each) => [each.zone.id, each]));
  const lines = zones.map((each, i): ZoneCostLine => {
    const zone = each.zoneId === null ? undefined : known.get(each.zoneId);
    const mean = zone?.analysis?.exposure.occupiedZoneAirTempC?.mean;
    return {
      key: each.zoneId === null ? "rest" : String(each.zoneId),
      zoneId: each.zoneId,
      code: each.code,
      stated: stated[i] as number,
      contribution: contributions[i] as number,
      p10: Math.round(each.p10),
      p90: Math.round(each.p90),
      belowPct: zone ? belowTargetPct(zone) : "",
      mean: mean === undefined ? "" : formatTemperature(mean, building.temperatureUnit).value,
      heaters: zone?.heaters ?? 0,
      coldReports: zone ? countOrMerged(zone.coldReports) : "",
      verdict: zone?.diagnosis?.verdict ?? null,
      working: each.working,
    };
  });
  lines.sort((a, b) => b.contribution - a.contribution);
  return { lines, stated: sum(stated), p50: sum(contributions) };
}

/** The gravest cause of each zone that is too cold, in the order of cost: what, where, and what to do. */
export function coldZoneLines(
  overview: ZonesOverview,
  order: readonly ZoneCostLine[],
  building: Pick<Building, "temperatureUnit" | "timeZone">,
): FindingLine[] {
  const words = quantityWords(building.temperatureUnit, building.timeZone);
  const zones = new Map(overview.zones.map((each) => [each.zone.id, each]));
  return order.flatMap(({ zoneId }) => {
    const zone = zoneId === null ? undefined : zones.get(zoneId);
    const { diagnosis } = zone ?? {};
    if (!zone || !diagnosis || diagnosis.verdict === "healthy" || diagnosis.verdict === "too-hot") return [];
    if (diagnosis.verdict === "undetermined") {
      const missing = diagnosis.missingPoints.map((kind) => kind.replaceAll("-", " ")).join(" and ");
      return {
        key: zone.zone.code,
        severity: "note" as const,
        sentence: `Zone ${zone.zone.code} is cold, but its trends do not tell why.`,
        action: missing ? `Bring in a trend of its ${missing}.` : undefined,
      };
    }
    const [first] = diagnosis.causes;
    if (!first) return [];
    const { what, action } = trendFindingWords(first, words);
    return { key: zone.zone.code, severity: first.severity, sentence: what, action };
  });
}

/** Where the figure stands and on what it rests: the page's one sentence. */
export function overviewLede(
  { assessment, record }: CostOfOvercooling,
  building: Pick<Building, "temperatureUnit" | "timeZone" | "targetZoneAirTempC">,
): string {
  const target = formatTemperature(building.targetZoneAirTempC, building.temperatureUnit).text;
  if (assessment.status !== "ok") return `Against a target zone air temperature of ${target}.`;
  const measured = assessment.zones.filter((zone) => zone.measured).length;
  const day = (seconds: number) => formatLocal(seconds * 1000, building.timeZone, "date");
  const basis =
    record && measured > 0
      ? `from the trends of ${measured} ${measured === 1 ? "zone" : "zones"}, ${day(record.fromUtcSeconds)} to ${day(record.toUtcSeconds - 1)}`
      : "from usual values, since no zone has trends that can be used yet";
  return `What keeping occupied zones below ${target} costs a year in the cooling season, ${basis}. The range holds with 80\u202f% probability.`;
}

/** Cold and hot reports, and how many of the cold ones come from the zones to look at, as far as they may be told. */
function reportsWords({ cold, hot }: { cold: number | null; hot: number | null }, ofCold: number | null): string {
  if (cold === null && hot === null) return "not shown, since too few people have reported";
  const from = ofCold === null ? "" : `, of them ${ofCold} from those zones`;
  const [coldWords, hotWords] = [
    cold === null ? "cold ones not shown (too few people)" : `${cold} cold${from}`,
    hot === null ? "hot ones not shown (too few people)" : `${hot} hot`,
  ];
  return `${coldWords}; ${hotWords}`;
}

/** Where the cold zones, the heaters and the reports are, in figures: the answer before the tables. */
export function summaryItems(
  { zones, reports }: ZonesOverview,
  { temperatureUnit, targetZoneAirTempC }: Pick<Building, "temperatureUnit" | "targetZoneAirTempC">,
): { term: string; value: string }[] {
  const cold = zones.filter(({ diagnosis }) => diagnosis && !["healthy", "too-hot"].includes(diagnosis.verdict));
  const causes = new Map<Verdict, number>();
  for (const { diagnosis } of cold)
    if (diagnosis) causes.set(diagnosis.verdict, (causes.get(diagnosis.verdict) ?? 0) + 1);
  const named = [...causes]
    .sort(([, a], [, b]) => b - a)
    .map(([verdict, count]) => `${VERDICT_WORDS[verdict]} ${count}`);
  const heaters = (of: ZonesOverview["zones"]): number => of.reduce((total, zone) => total + zone.heaters, 0);
  const ofCold = reports.sumOver(new Set(cold.map(({ zone }) => zone.id)), "cold");
  const target = formatTemperature(targetZoneAirTempC, temperatureUnit).text;
  return [
    {
      term: "Zones to look at",
      value: `${cold.length} of ${zones.length}${named.length > 0 ? `: ${named.join(", ")}` : ""}`,
    },
    { term: "Heaters in use", value: `${heaters(zones)}, of them ${heaters(cold)} in those zones` },
    { term: "Comfort reports", value: reportsWords(reports.totals, ofCold) },
    { term: "Counted against", value: `a target zone air temperature of ${target}` },
  ];
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
