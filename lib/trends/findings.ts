import type { Evidence, Finding } from "@/lib/findings/finding";
import { CAUSE_SENTENCES } from "./diagnosis/cause-words";
import { type QuantityWords, quantityWords } from "./quantity-words";

/** What a finding says to a facilities manager, and what to do about it ("" when nothing). */
export type FindingWords = { what: string; action: string };

type Say = (evidence: Evidence, words: QuantityWords) => FindingWords;

const SENTENCES: Record<string, Say> = {
  ...CAUSE_SENTENCES,
  "occupied-hours-source": (e) => ({
    what:
      e.source === "schedule"
        ? "Occupied hours are those of the building's schedule."
        : e.source === "occupancy-trend"
          ? "Occupied hours are the recorded occupancy of the zone."
          : "Occupied hours are the recorded occupancy of the zone where there is one, and the building's schedule elsewhere.",
    action: "",
  }),
  "coarse-samples": (e) => ({
    what: `The trend of ${String(e.point).replaceAll("-", " ")} has a sample every ${Math.round(Number(e.stepMinutes))} min; states need 15 min or less.`,
    action: "Set the trend to 15 min or less.",
  }),
  "minimum-airflow-estimated": (e, w) => ({
    what: `The minimum airflow of ${w.airflow(e.minimumAirflowM3ps)} was read off the ${e.origin === "airflow-setpoint-trend" ? "airflow setpoint" : "airflow"} trend (${w.hours(e.hours)}).`,
    action: "Enter the commissioned minimum from the controller in the zone's record.",
  }),
  "minimum-airflow-unknown": () => ({
    what: "The minimum airflow is not in the zone's record and cannot be told from the trends.",
    action: "Enter it in the zone's record, or trend the airflow setpoint.",
  }),
  "record-too-short": (e) => ({
    what: `The zone air record holds ${Math.floor(Number(e.recordedDays))} days of data; ${e.neededDays} are needed to speak of a year.`,
    action: "Import a longer record, with a mild and a hot week in it.",
  }),
  "no-cooling-season": () => ({
    what: "The record has no occupied hours warm enough outdoors for mechanical cooling.",
    action: "Import trends of a warmer time of the year.",
  }),
  "zone-air-gaps": (e, w) => ({
    what: `Zone air is missing for ${w.hoursOf(e.gapHours, e.occupiedHours)} of occupied time.`,
    action: "Look why the trend stops; hours without data are left out.",
  }),
  "outdoor-gaps": (e, w) => ({
    what: `${w.hours(e.leftOutHours)} of occupied time are left out because the outdoor temperature is missing.`,
    action: "Complete the outdoor air trend.",
  }),
  "no-outdoor-record": () => ({
    what: "No outdoor air temperature goes with these trends: all occupied hours count as cooling season, and no minimum airflow is proposed, since winter cannot be told apart.",
    action: "Import the outdoor air temperature for the same time.",
  }),
  "state-points-missing": (e, w) => ({
    what: `Without ${w.list(e.points)} it cannot be told what the box was doing for ${w.hours(e.undeterminedHours)}; cooling is not assumed.`,
    action: `Trend ${w.list(e.points)} for this zone.`,
  }),
  "setpoint-record-short": (e, w) => ({
    what: `The cooling setpoint is recorded for ${w.hoursOf(e.setpointHours, e.occupiedHours)} of occupied time; it is not carried outside its record.`,
    action: "Export the setpoint for the whole time of the zone air record.",
  }),
  "annual-by-season-mean": () => ({
    what: "The year is taken to be like the record as a whole, whatever the weather.",
    action: "Import the outdoor air temperature, and at least 20 occupied hours of each kind of weather.",
  }),
  "weather-not-covered": (e) => ({
    what: `${Math.round(Number(e.extrapolatedPct))} % of the year's cooling hours have weather that the record hardly saw; the nearest recorded weather stands in.`,
    action: "Import trends of a milder and a hotter time.",
  }),
};

export const TREND_FINDING_CODES: readonly string[] = Object.keys(SENTENCES);

/** The sentences for a finding of this folder. Throws on a code that has none: every code must. */
export function trendFindingWords(finding: Finding, words: QuantityWords = quantityWords("C", "UTC")): FindingWords {
  const say = SENTENCES[finding.code];
  if (!say) throw new RangeError(`no sentence for the finding ${finding.code}`);
  return say(finding.evidence, words);
}
