import type { Evidence, Finding } from "@/lib/findings/finding";
import { type QuantityWords, quantityWords } from "./quantity-words";

/** What a finding says to a facilities manager, and what to do about it ("" when nothing). */
export type FindingWords = { what: string; action: string };

type Say = (evidence: Evidence, words: QuantityWords) => FindingWords;

const ENGINEER =
  "Have an engineer check the ventilation minimum and the system's outdoor air before any box is changed; never go below either.";

/** "12 of 300 h (4 %)". */
const part = (e: Evidence, w: QuantityWords): string => w.hoursOf(e.hours, e.ofHours);

const minimum = (e: Evidence, w: QuantityWords): string => {
  const size = w.airflow(e.minimumAirflowM3ps);
  const ofDesign = typeof e.minimumPctOfDesign === "number" ? `, ${Math.round(e.minimumPctOfDesign)} % of design` : "";
  const origin = e.minimumAirflowOrigin === "estimated" ? " (estimated from the trend)" : "";
  return `${size}${ofDesign}${origin}`;
};

/** Mean shortfall of the zone air below the target over the cooling season. */
const shortfall = (e: Evidence, w: QuantityWords): string =>
  `Zone ${e.zone} fell short of ${w.temp(e.targetC)} by ${w.size(e.meanShortfallK)} on average over ${w.hours(e.ofHours)}`;

const sharePct = (e: Evidence, parts: readonly string[]): string => {
  const share = parts.reduce((sum, key) => sum + Number(e[key]), 0) / Number(e.totalKh);
  return `${Math.round(100 * share)} %`;
};

const counted = (count: unknown, noun: string): string => `${count} ${noun}${count === 1 ? "" : "s"}`;

const SENTENCES: Record<string, Say> = {
  // Causes
  "sensor-bias": (e, w) => ({
    what: `Zone ${e.zone} reads ${w.difference(e.floatOffsetK)} against the middle of the other zones of the ${e.comparedWith} in ${w.hours(e.hours)} of unoccupied time with little airflow, when all should drift alike.`,
    action: `Compare the sensor with a calibrated logger beside it and look for a window, copier or duct near it${Number(e.heaters) > 0 ? "; move the heaters of this zone away from it first" : ""}. A wrong sensor makes any setpoint wrong.`,
  }),
  "cold-reports-at-target": (e, w) => ({
    what: `${e.reports} of ${e.ofReports} cold reports from zone ${e.zone} came while its sensor read ${w.temp(e.targetC)} or more.`,
    action:
      "Measure at the desks: the sensor may read high, or the desks sit in a draught or beside cold glass. Do this before touching the setpoint.",
  }),
  "setpoint-stepped-down": (e, w) => ({
    what: `The occupied cooling setpoint of zone ${e.zone} fell from ${w.temp(e.beforeC)} to ${w.temp(e.afterC)} on ${w.date(e.sinceUtcSeconds)} and has stayed there; ${e.neighboursAlike} of ${e.neighbours} other zones did the same.`,
    action:
      "Find out who set it and why, put it back, limit local adjustment to about 1 K (2 °F) and let overrides expire.",
  }),
  "setback-not-followed": (e, w) => ({
    what: `The cooling setpoint of zone ${e.zone} rises by ${w.size(e.ownSetbackK)} in unoccupied hours; in the other zones it rises by ${w.size(e.neighbourSetbackK)}.`,
    action: "Look for a hold or manual override on this controller and release it.",
  }),
  "cold-start": (e, w) => ({
    what: `Zone ${e.zone} averages ${w.temp(e.earlyMeanC)} from 06 to 09 h on working days and ${w.temp(e.middayMeanC)} by midday.`,
    action:
      "Shorten precooling or the morning purge and check the unoccupied setback; the occupied setpoint is not the cause.",
  }),
  "airflow-above-command": (e, w) => ({
    what: `In zone ${e.zone} the damper stood at its minimum while more than 1.5 times the minimum airflow (${minimum(e, w)}) passed, for ${part(e, w)}.`,
    action: "Check damper and actuator for sticking, rezero the flow sensor and check its calibration factor.",
  }),
  "reheat-valve-leaking": (e, w) => ({
    what: `In zone ${e.zone} discharge air was ${w.size(e.meanDifferenceK)} warmer than supply air with the reheat valve shut, for ${part(e, w)}.`,
    action:
      "Repair or replace the reheat valve, then look at this zone again: the leak wastes heat and hides overcooling.",
  }),
  "reheat-without-heat": (e, w) => ({
    what: `In zone ${e.zone} the reheat valve was fully open with no heat in the discharge air, and the zone was below its heating setpoint, for ${part(e, w)}.`,
    action: `Look for a boiler summer lock-out, a closed isolating valve or air in the coil. Better: lower the minimum airflow so that no reheat is needed. ${ENGINEER}`,
  }),
  "reheat-at-minimum": (e, w) => ({
    what: `Zone ${e.zone} sat at its heating setpoint${e.setpointC === null ? "" : ` (${w.temp(e.setpointC)})`} in the cooling season and reheated its own minimum airflow (${minimum(e, w)}) for ${part(e, w)}.`,
    action: `Lower the minimum airflow; raising the cooling setpoint will not help. ${ENGINEER}`,
  }),
  "minimum-airflow-overcooling": (e, w) => ({
    what: `Zone ${e.zone} drifted below its cooling setpoint${e.setpointC === null ? "" : ` (${w.temp(e.setpointC)})`} at minimum airflow (${minimum(e, w)}) with no call for cooling, for ${part(e, w)}.`,
    action: `Lower the minimum airflow towards what ventilation requires; raising the cooling setpoint saves nothing here and warms nobody. ${ENGINEER}`,
  }),
  "degree-hours-at-minimum": (e, w) => ({
    what: `${shortfall(e, w)}: ${sharePct(e, ["deadbandKh", "reheatKh"])} of it at minimum airflow or in reheat (${w.hours(Number(e.deadbandHours) + Number(e.reheatHours))}), ${sharePct(e, ["coolingKh"])} while cooling (${w.hours(e.coolingHours)}).`,
    action: `Lower the minimum airflow towards what ventilation requires; while a zone gets its minimum, the cooling setpoint has no say. ${ENGINEER}`,
  }),
  "narrow-deadband": (e, w) => ({
    what: `The setpoints of zone ${e.zone} are ${w.size(e.deadbandK)} apart, and it changed between reheat and cooling within an hour ${e.alternations} times in ${w.hours(e.ofHours)}.`,
    action: `Widen the gap to at least ${w.size(e.neededK)}: raise the cooling setpoint, lower the heating setpoint, or both.`,
  }),
  "setpoint-too-low": (e, w) => ({
    what: `Zone ${e.zone} is held at its cooling setpoint of ${w.temp(e.setpointC)}, below the ${w.temp(e.targetC)} aimed at, for ${part(e, w)}; ${e.coldReports} cold reports, ${e.heaters} heaters.`,
    action: "Raise the cooling setpoint by 0.5 to 1 K (1 to 2 °F) a week and watch for hot reports.",
  }),
  "degree-hours-in-cooling": (e, w) => ({
    what: `${shortfall(e, w)}: ${sharePct(e, ["coolingKh"])} of it while cooling (${w.hours(e.coolingHours)})${e.setpointC === null ? "" : `, with a cooling setpoint of ${w.temp(e.setpointC)}`}.`,
    action:
      "Check the cooling setpoint and how the box follows it; raise it by 0.5 to 1 K (1 to 2 °F) a week and watch.",
  }),
  "one-cold-desk": (e, w) => ({
    what: `${e.reports} of ${e.ofReports} cold reports from zone ${e.zone} come from desk ${e.desk}; the zone averages ${w.temp(e.meanZoneAirC)}.`,
    action:
      "Look for a draught, a diffuser blowing on the desk or cold glass; move the desk or offer a low-power foot warmer. Leave the zone's setpoint alone.",
  }),
  "short-of-air": (e, w) => ({
    what: `Zone ${e.zone} was at or above its cooling setpoint with all the air its box can give (${w.airflow(e.designAirflowM3ps)}) for ${part(e, w)}, and over 0.5 K above both it and the target for ${w.hours(e.tooWarmHours)}; ${counted(e.reports, "hot report")}.`,
    action: "Rebalance or rezone, and look for added heat. Do not raise this zone's setpoint.",
  }),
  "hot-reports": (e, w) => ({
    what: `Zone ${e.zone} has ${e.reports} hot reports against ${e.coldReports} cold in the cooling season (by chance alone: ${Number(e.chancePct).toFixed(1)} %), and was over 1 K above its cooling setpoint for ${w.hoursOf(e.aboveSetpointHours, e.ofHours)}.`,
    action: "Leave it out of any rise of setpoints; look at its airflow and heat gains.",
  }),

  // The record
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
    what: "No outdoor air temperature goes with these trends: all occupied hours count as cooling season.",
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
