import type { Evidence, Finding } from "@/lib/findings/finding";
import type { FindingWords } from "../findings";
import { type PointKind, STORED_UNIT } from "../point-kind";
import { type QuantityWords, quantityWords } from "../quantity-words";
import { STUCK_CHANGE_HOURS, STUCK_INTERVAL_HOURS } from "./stuck-runs";
import { LIKELY_LIMITS } from "./value-limits";

/** One fact of a finding; a sentence may ask for one that is not there. */
type Fact = Evidence[string] | undefined;

type Say = (evidence: Evidence, words: QuantityWords) => FindingWords;

const named = (kind: Fact): string =>
  String(kind)
    .replaceAll("-", " ")
    .replace(/ temp$/, " temperature");
const listed = (kinds: Fact): string =>
  Array.isArray(kinds) ? kinds.map((each) => named(each)).join(", ") : named(kinds);
const span = (e: Evidence, w: QuantityWords): string =>
  `${w.instant(e.fromUtcSeconds)} to ${w.instant(e.toUtcSeconds)}`;
const days = (value: Fact): string => {
  const count = Number(value);
  return `${count < 10 ? count.toFixed(1) : Math.round(count)} ${count === 1 ? "day" : "days"}`;
};
const minutes = (value: Fact): string => `${Math.abs(Number(value))} min`;
const later = (value: Fact): string => (Number(value) > 0 ? "later" : "earlier");

/** A value in the stored unit of its kind as the building shows it. */
function reading(kind: PointKind, value: Fact, w: QuantityWords): string {
  if (kind === "airflow" || kind === "airflow-setpoint") return w.airflow(value);
  const unit = STORED_UNIT[kind];
  if (unit === "percent") return `${Number(value).toFixed(1)} %`;
  if (unit === "percentRH") return `${Number(value).toFixed(1)} %RH`;
  if (unit === "kW" || unit === "kWh") return `${Number(value).toFixed(1)} ${unit}`;
  if (unit === "W") return `${Math.round(Number(value))} W`;
  return unit === "state" ? String(value) : w.temp(value);
}

const SENTENCES: Record<string, Say> = {
  "zone-air-missing": () => ({
    what: "The zone air temperature of this zone is not recorded: nothing can be said of it.",
    action: "Set up a trend of it at 15 min or less, and bring it in.",
  }),
  "trend-missing": (e) => ({
    what: `There is no trend of the ${named(e.point)}.`,
    action: `Set up a trend of the ${named(e.point)} at the controller, and bring it in.`,
  }),
  "design-airflow-unknown": () => ({
    what: "The design airflow is not in the zone's record.",
    action: "Enter it in the zone's record, from the drawings or the balancing report.",
  }),
  "trend-short": (e, w) => ({
    what: `The ${named(e.point)} is recorded for ${days(e.coveredDays)} of the ${days(e.ofDays)} of the ${e.comparedWith === "zone-air" ? "zone air temperature" : "building's record"}: ${span(e, w)}. It is not carried outside its record.`,
    action: `Export the ${named(e.point)} for the whole time; systems often keep only the last few hundred changes of a log, so raise its size.`,
  }),
  "samples-missing": (e, w) => ({
    what: `No samples of ${listed(e.points)} for ${w.hours(e.hours)}, ${span(e, w)}${e.scope === "building" ? ", in all zones at once" : ""}.`,
    action:
      e.scope === "building"
        ? "The trend server or its network stood still; export that time again if the controllers kept it."
        : Array.isArray(e.points) && e.points.length > 1
          ? "Several points at once: look at the controller's power and network; export that time again if it was kept."
          : "One point alone: look at its log's settings and at the sensor.",
  }),
  "sensor-stuck": (e, w) => ({
    what: `The ${named(e.point)} stood at ${w.temp(e.valueC)} for ${w.hours(e.hours)}, ${span(e, w)}${e.compared ? ", while the other zones moved" : "; there is no other zone to hold it against"}${Number(e.times) > 1 ? `; ${e.times} times so, ${w.hours(e.totalHours)} in all` : ""}. From ${STUCK_INTERVAL_HOURS} h (${STUCK_CHANGE_HOURS} h on change of value, or without another zone) an unchanged sensor is named: judgement, no source.`,
    action:
      "Read the sensor at the controller: a value put in by hand, a lost sensor or a stalled log looks like this.",
  }),
  "values-unlikely": (e, w) => {
    const kind = e.point as PointKind;
    const limits = LIKELY_LIMITS[kind];
    const at = (value: Fact): string => reading(kind, value, w);
    return {
      what: `${e.samples} of ${e.ofSamples} samples of the ${named(kind)} lie outside ${at(limits.low)} to ${at(limits.high)}, between ${at(e.lowest)} and ${at(e.highest)}; first and last ${span(e, w)}. The limits are common practice, no source.`,
      action: "Look at the sensor and at the unit and scaling of the point; correct them and bring the time in again.",
    };
  },
  "unit-switched": (e, w) => ({
    what: `On ${w.date(e.atUtcSeconds)} the ${named(e.point)} steps from ${w.temp(e.beforeC)} to ${w.temp(e.afterC)}: ${
      e.to === "not-converted" ? "°F taken for °C" : "°C taken for °F"
    } on one side of the step${Number(e.times) > 1 ? ` (${e.times} such steps)` : ""}.`,
    action: "Bring in the wrong part again with its own unit.",
  }),
  "clock-change-not-followed": (e, w) => ({
    what: `Since the clocks changed on ${w.date(e.atUtcSeconds)} the ${named(e.point)} runs ${minutes(e.minutes)} ${later(e.minutes)} by the wall clock than in the weeks before (likeness ${Number(e.correlation).toFixed(2)} when moved, ${Number(e.correlationUnmoved).toFixed(2)} when not).`,
    action:
      "Compare the clocks of the controller and of the trend server with the wall clock. If the file has standard time all year, bring it in again and say so.",
  }),
  "clock-change-hour-missing": (e, w) => ({
    what:
      e.pass === "after"
        ? `The hour after the clocks went forward, from ${w.instant(e.atUtcSeconds)}, has no samples of ${listed(e.points)}.`
        : `When the clocks went back at ${w.instant(e.atUtcSeconds)}, the ${e.pass} pass of the repeated hour has no samples of ${listed(e.points)}.`,
    action: "Export with the offset from UTC, or in UTC, to have it; one hour changes no figure.",
  }),
  "clock-change-hour-doubled": (e, w) => ({
    what: `At the clock change of ${w.instant(e.atUtcSeconds)}, the hour holds more samples of ${listed(e.points)} than fit: both passes of the repeated hour seem to stand in one.`,
    action: "Export with the offset from UTC, or in UTC.",
  }),
  "clock-off": (e) => ({
    what: `The ${named(e.point)} runs ${minutes(e.minutes)} ${later(e.minutes)} than that of ${e.others} other zones (likeness ${Number(e.correlation).toFixed(2)} when moved, ${Number(e.correlationUnmoved).toFixed(2)} when not).`,
    action:
      "Compare this controller's clock and time schedule with the others'; a schedule of its own is no fault of the data.",
  }),
};

export const QUALITY_FINDING_CODES: readonly string[] = Object.keys(SENTENCES);

export const isQualityFinding = (finding: Finding): boolean => finding.code in SENTENCES;

/** The sentences for a finding of this folder. Throws on a code that has none. */
export function qualityFindingWords(finding: Finding, words: QuantityWords = quantityWords("C", "UTC")): FindingWords {
  const say = SENTENCES[finding.code];
  if (!say) throw new RangeError(`no sentence for the finding ${finding.code}`);
  return say(finding.evidence, words);
}
