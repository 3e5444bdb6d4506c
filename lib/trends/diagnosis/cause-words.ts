import type { Evidence } from "@/lib/findings/finding";
import { counted as countedWords } from "@/lib/units/counted";
import type { FindingWords } from "../findings";
import type { QuantityWords } from "../quantity-words";
import type { CauseCode } from "./zone-evidence";

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

const counted = (count: unknown, noun: string): string => countedWords(Number(count), noun);

const namesOf = (names: unknown): string => (Array.isArray(names) ? names.join(", ") : "");

/** What the supply air did, for rows 10 and 11. */
const coldSupply = (e: Evidence, w: QuantityWords): string =>
  `${(e.zonesAtMinimum as readonly string[] | undefined)?.length ?? 0} of ${counted(e.zones, "zone")} of ${e.airHandler ? `air handler ${e.airHandler}` : "the air handler"}, zone ${e.zone} among them, sit at their minimum airflow or reheat it, and its supply air stays at ${w.temp(e.mildMedianC)} (within ${w.size(e.mildSpreadK)}) in ${w.hours(e.hours)} below ${w.temp(e.mildBelowC)} outdoors`;

/** Every cause in words: what was seen, how much of it, and what to do. */
export const CAUSE_SENTENCES: Record<CauseCode, Say> = {
  "sensor-bias": (e, w) => ({
    what: `Zone ${e.zone} reads ${w.difference(e.floatOffsetK)} against the middle of the other zones of the ${e.comparedWith} in ${w.hours(e.hours)} of unoccupied time with little airflow, when all should drift alike.`,
    action: `Compare the sensor with a calibrated logger beside it and look for a window, copier or duct near it${Number(e.heaters) > 0 ? "; move the heaters of this zone away from it first" : ""}. A wrong sensor makes any setpoint wrong.`,
  }),
  "heater-warms-thermostat": (e, w) => ({
    what: `In zone ${e.zone} the reading jumped by ${w.size(e.meanRiseK)} within half an hour ${e.source === "own-readings" ? `at ${counted(e.jumps, "start")} of a heater (of ${e.ofEvents} by its own meter)` : `${counted(e.jumps, "time")} (of ${counted(e.ofEvents, "jump")}) while the other zones stood still`}, and the box answered with ${w.airflow(e.airflowAfterM3ps)} instead of ${w.airflow(e.airflowBeforeM3ps)}; ${counted(e.heaters, "heater")} on the register, ${Math.round(Number(e.heaterHoursPerYear))} h a year.`,
    action:
      "A heater warms the thermostat and draws more cold air onto everyone: move the heater away from the sensor (or the sensor from the desk) before touching a setpoint, then look again.",
  }),
  "cold-reports-at-target": (e, w) => ({
    what: `${e.reports} of ${counted(e.ofReports, "cold report")} from zone ${e.zone} came while its sensor read ${w.temp(e.targetC)} or more.`,
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
  "single-maximum": (e, w) => ({
    what: `The box of zone ${e.zone} gives ${w.airflow(e.lightAirflowM3ps)} (${Math.round(Number(e.lightPctOfDesign))} % of design) in light reheat (${w.hours(e.lightHours)}) and ${w.airflow(e.heavyAirflowM3ps)} with the valve ${e.heavyFromPct} % open or more (${w.hours(e.heavyHours)}): one maximum for heating, which is its cooling minimum as well.`,
    action: `Program the box with two maximums: a small minimum, reheated first, and more air only for a larger call for heat. Raising the cooling setpoint will not help. ${ENGINEER}`,
  }),
  "supply-air-not-reset": (e, w) => ({
    what: `${coldSupply(e, w)}${e.hotMedianC === null ? "" : `, as in hot weather (${w.temp(e.hotMedianC)})`}.${(e.zonesShortOfAir as readonly string[] | undefined)?.length ? ` Short of air, and so able to hold it down: ${namesOf(e.zonesShortOfAir)}.` : ""}`,
    action: e.heldForHumidity
      ? "Do not reset it while the cold dries the air: see what is said of the humidity."
      : `Reset the supply air temperature by the zones' demand (trim and respond), after putting right any zone that holds it down${Number(e.humidityHours) > 0 ? "" : "; check the humidity first, since no trend of it is here"}. Raising this zone's cooling setpoint will not help.`,
  }),
  "supply-air-held-for-humidity": (e, w) => ({
    what: `${coldSupply(e, w)}; in ${w.hoursOf(e.humidHours, e.humidityHours)} of them the air was above ${e.humidAbovePct} % relative humidity or a dew point of ${w.temp(e.humidDewPointC)} (middle dew point ${w.temp(e.medianDewPointC)}): the cold dries it.`,
    action: `Keep the supply air temperature and lower the minimum airflows instead. ${ENGINEER}`,
  }),
  "degree-hours-at-minimum": (e, w) => ({
    what: `${shortfall(e, w)}: ${sharePct(e, ["deadbandKh", "reheatKh"])} of it at minimum airflow or in reheat (${w.hours(Number(e.deadbandHours) + Number(e.reheatHours))}), ${sharePct(e, ["coolingKh"])} while cooling (${w.hours(e.coolingHours)}).`,
    action: `Lower the minimum airflow towards what ventilation requires; while a zone gets its minimum, the cooling setpoint has no say. ${ENGINEER}`,
  }),
  "narrow-deadband": (e, w) => ({
    what: `The setpoints of zone ${e.zone} are ${w.size(e.deadbandK)} apart, and it changed between reheat and cooling within an hour ${counted(e.alternations, "time")} in ${w.hours(e.ofHours)}.`,
    action: `Widen the gap to at least ${w.size(e.neededK)}: raise the cooling setpoint, lower the heating setpoint, or both.`,
  }),
  "setpoint-too-low": (e, w) => ({
    what: `Zone ${e.zone} is held at its cooling setpoint of ${w.temp(e.setpointC)}, below the ${w.temp(e.targetC)} aimed at, for ${part(e, w)}; ${counted(e.coldReports, "cold report")}, ${counted(e.heaters, "heater")}.`,
    action: "Raise the cooling setpoint by 0.5 to 1 K (1 to 2 °F) a week and watch for hot reports.",
  }),
  "degree-hours-in-cooling": (e, w) => ({
    what: `${shortfall(e, w)}: ${sharePct(e, ["coolingKh"])} of it while cooling (${w.hours(e.coolingHours)})${e.setpointC === null ? "" : `, with a cooling setpoint of ${w.temp(e.setpointC)}`}.`,
    action:
      "Check the cooling setpoint and how the box follows it; raise it by 0.5 to 1 K (1 to 2 °F) a week and watch.",
  }),
  "one-cold-desk": (e, w) => ({
    what: `${e.reports} of ${counted(e.ofReports, "cold report")} from zone ${e.zone} come from desk ${e.desk}; the zone averages ${w.temp(e.meanZoneAirC)}.`,
    action:
      "Look for a draught, a diffuser blowing on the desk or cold glass; move the desk or offer a low-power foot warmer. Leave the zone's setpoint alone.",
  }),
  "short-of-air": (e, w) => ({
    what: `Zone ${e.zone} was at or above its cooling setpoint with all the air its box can give (${w.airflow(e.designAirflowM3ps)}) for ${part(e, w)}, and over 0.5 K above both it and the target for ${w.hours(e.tooWarmHours)}; ${counted(e.reports, "hot report")}.`,
    action: "Rebalance or rezone, and look for added heat. Do not raise this zone's setpoint.",
  }),
  "hot-reports": (e, w) => ({
    what: `Zone ${e.zone} has ${counted(e.reports, "hot report")} against ${e.coldReports} cold in the cooling season (by chance alone: ${Number(e.chancePct).toFixed(1)} %), and was over 1 K above its cooling setpoint for ${w.hoursOf(e.aboveSetpointHours, e.ofHours)}.`,
    action: "Leave it out of any rise of setpoints; look at its airflow and heat gains.",
  }),
  "short-compressor-runs": (e, w) => ({
    what: `The unit of zone ${e.zone} ran ${counted(e.runs, "time")}, ${e.shortRuns} of them for less than ${e.leastMinutes} min (middle ${Number(e.medianMinutes).toFixed(0)} min), and held the zone within 1 K of its cooling setpoint${e.setpointC === null ? "" : ` (${w.temp(e.setpointC)})`} for ${part(e, w)}.`,
    action:
      "Raise the cooling setpoint by 0.5 to 1 K (1 to 2 °F) a week, and lengthen the least running time or widen the thermostat's differential: the unit is large for its load and overshoots.",
  }),
  "cold-without-cooling": (e, w) => ({
    what: `Zone ${e.zone} was 1 K or more below ${w.temp(e.targetC)} for ${part(e, w)} although its unit had not cooled for an hour or more.`,
    action:
      "Look for outdoor air that is not tempered, a fan that runs on with its damper open, a leaking coil valve, or cold air from next door. The cooling setpoint is not what keeps it cold.",
  }),
  "rooms-of-different-needs": (e, w) => ({
    what: `Zone ${e.zone} has ${counted(e.coldReports, "cold report")} (always cold: ${namesOf(e.coldDesks)}) and ${counted(e.hotReports, "hot report")} (always hot: ${namesOf(e.hotDesks)}) in the cooling season at much the same reading, ${w.temp(e.meanReadingColdC)} and ${w.temp(e.meanReadingHotC)} (by chance alone: ${Number(e.chancePct).toFixed(1)} %).`,
    action:
      "One thermostat serves places with different heat gains: average several sensors, move the sensor, or split the zone. A higher setpoint would make the hot places hotter.",
  }),
};
