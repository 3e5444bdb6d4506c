import type { Evidence } from "@/lib/findings/finding";
import { counted } from "@/lib/units/counted";
import { formatNumber, formatTemperatureDifference, type TemperatureUnit } from "@/lib/units/format";
import type { MeterFinding, MeterFindingCode } from "./meter/meter-finding";

/** What a finding of a meter model says to a facilities manager, and what to do about it ("" when nothing). */
export type MeterFindingWords = { what: string; action: string };

type Say = (e: Evidence, unit: TemperatureUnit) => MeterFindingWords;
type Value = Evidence[string] | undefined;

const whole = (value: Value): string => formatNumber(Number(value), { decimals: 0 });
const percent = (value: Value, decimals = 0): string => `${formatNumber(100 * Number(value), { decimals })} %`;
const step = (value: Value, unit: TemperatureUnit): string => formatTemperatureDifference(Number(value), unit).text;
/** Energy a kelvin, or a Fahrenheit degree. */
const slope = (value: Value, unit: TemperatureUnit): string =>
  `${formatNumber(Number(value) / (unit === "F" ? 1.8 : 1), { significantDigits: 3 })} kWh/${unit === "F" ? "°F" : "K"}`;

const SENTENCES: Record<MeterFindingCode, Say> = {
  "days-few": (e) => ({
    what: `Only ${whole(e.days)} of the last ${whole(e.recordedDays)} days have energy and outdoor air temperature; a baseline year needs ${whole(e.leastDays)} (${whole(e.energyDays)} are without energy, ${whole(e.zeroDays)} read 0, ${whole(e.outdoorDays)} are without outdoor air).`,
    action: "Bring in the missing days of the meter and of the outdoor air temperature.",
  }),
  "days-missing": (e) => ({
    what: `${counted(Number(e.energyDays) + Number(e.zeroDays) + Number(e.outdoorDays), "day")} of the year left out: ${whole(e.energyDays)} without energy, ${whole(e.zeroDays)} that read 0, ${whole(e.outdoorDays)} without outdoor air temperature.`,
    action: "",
  }),
  "bills-few": (e) => ({
    what: `Only ${whole(e.bills)} of ${whole(e.recordedBills)} bills can be used; ${whole(e.leastBills)} are needed (${whole(e.outdoorBills)} have no outdoor air temperature recorded for their days).`,
    action: "Enter a year of bills, and bring in the outdoor air temperature of the same months.",
  }),
  "bills-overlap": (e) => ({
    what: `Bills that begin on ${Array.isArray(e.bills) ? e.bills.join(", ") : ""} cover days of the bills before them and are left out.`,
    action: "Correct their days in the table of bills and bring it in again.",
  }),
  "energy-unusual": (e) => {
    const days = Array.isArray(e.days) ? e.days : [];
    const named = days.slice(0, 5).join(", ");
    return {
      what: `${days.length === 1 ? "One day" : `${days.length} days`} used far more than the rest, above the median by more than three interquartile ranges: ${named}${days.length > 5 ? " and others" : ""}. They are kept in the model.`,
      action: "Find out what ran on them; a fault or a second tenant has no place in a baseline.",
    };
  },
  "outdoor-missing": () => ({
    what: "No outdoor air temperature is recorded in this building, so energy cannot be set against it.",
    action: "Import an outdoor air temperature trend of the same period, from the control system or a weather station.",
  }),
  "no-model": (e) => ({
    what:
      e.type === "other-days"
        ? `No model fits the ${whole(e.readings)} days that are not occupied: nothing says that they follow outdoor air, and they count as having no cooling.`
        : `No model may be used for ${e.type === "bills" ? `the ${whole(e.readings)} bills` : `the ${whole(e.readings)} occupied days`}; the reasons follow for the one that comes closest.`,
    action: "",
  }),
  "no-cooling-change-point": (e) => ({
    what: `The model (${String(e.model)}) has no change point above which cooling begins, so it does not say what a setpoint is worth.`,
    action: "Look whether cooling is on this meter at all.",
  }),
  "beyond-fitted-temperatures": (e, unit) => ({
    what: `The weather year goes ${step(e.beyondK, unit)} beyond the temperatures that the model was fitted to; there the line is a guess.`,
    action: "",
  }),
  "saving-below-noise": (e) => ({
    what: `One kelvin is ${percent(e.savedFraction, 1)} of this meter's energy, and the meter cannot show less than ${percent(e.leastFraction, 1)} in a year (half of the saving uncertain, at 68 %). A trial would not be seen here.`,
    action: "Meter the cooling plant apart, or switch the setpoint back and forth by the week.",
  }),
  "temperature-span-short": (e, unit) => ({
    what: `The readings span only ${step(e.spanK, unit)} of outdoor air temperature; ${step(e.leastK, unit)} are the least for a model.`,
    action: "Wait for other weather, or bring in an older record.",
  }),
  "slope-wrong-sign": (e, unit) => ({
    what: `The ${String(e.side)} slope of the ${String(e.model)} model is ${slope(e.slopeKwhPerK, unit)}: it would use less the ${e.side === "cooling" ? "hotter" : "colder"} it gets.`,
    action: "",
  }),
  "slope-days-few": (e, unit) => ({
    what: `The ${String(e.side)} slope of the ${String(e.model)} model rests on ${whole(e.days)} days and ${step(e.degreeDays, unit)} times days beyond its change point; ${whole(e.leastDays)} days and ${step(e.leastDegreeDays, unit)} times days are the least.`,
    action: "",
  }),
  "slope-not-significant": (e, unit) => ({
    what: `The ${String(e.side)} slope of the ${String(e.model)} model, ${slope(e.slopeKwhPerK, unit)} with a standard error of ${slope(e.standardErrorKwhPerK, unit)}, may be luck (${percent(e.chance)} chance, at most ${percent(e.most)} is let pass).`,
    action: "",
  }),
  "parameters-not-determined": (e) => ({
    what: `The readings do not settle every value of the ${String(e.model)} model.`,
    action: "",
  }),
  "cv-rmse-high": (e) => ({
    what: `The ${String(e.model)} model misses the readings by ${percent(e.cvRmse)} (CV(RMSE)); ${percent(e.most)} is the most for energy by the ${String(e.reading)}.`,
    action: "Something other than outdoor air drives this meter: look at occupancy, schedules and what else it feeds.",
  }),
};

/** Sentences of a finding, with temperatures in the building's unit. */
export const meterFindingWords = (finding: MeterFinding, unit: TemperatureUnit): MeterFindingWords =>
  SENTENCES[finding.code](finding.evidence, unit);
