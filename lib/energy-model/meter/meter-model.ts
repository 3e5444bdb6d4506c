import { chooseModel, type ModelChoice } from "../change-point/choose-model";
import { LEAST_TEMP_SPAN_K, type ReadingLength } from "../change-point/fit-rules";
import type { MeterFinding } from "./meter-finding";
import {
  baselineOfBills,
  baselineOfDays,
  type MeterBill,
  type MeterDay,
  type MeterReading,
  type MeterRecord,
} from "./meter-record";

/** Days of one type have a model of their own: an office uses another amount on a working day than on a Sunday. */
export type DayType = "occupied-days" | "other-days" | "bills";

export type DayTypeModel = { type: DayType; readings: MeterReading[]; choice: ModelChoice };

/**
 * A meter against outdoor air temperature. Refused when the record does not make a baseline, or when no model of the
 * occupied days (or bills) may be used; its findings say why. Other days without a model have no slope that can be shown,
 * and are no reason to refuse.
 */
export type MeterModel = {
  status: "ok" | "refused";
  length: ReadingLength;
  record: MeterRecord;
  types: DayTypeModel[];
  findings: MeterFinding[];
};

/** Models of an interval meter by day: one for the days on which the building is occupied, one for the others. */
export function modelOfDays(days: readonly MeterDay[]): MeterModel {
  const { record, usable } = baselineOfDays(days);
  const types = (["occupied-days", "other-days"] as const).flatMap((type) => {
    const readings = usable.filter((day) => day.occupied === (type === "occupied-days"));
    return readings.length > 0 ? [typeModel(type, readings, "day")] : [];
  });
  return meterModel("day", record, types);
}

/** Model of a meter by its bills: energy of a mean day against the mean temperature of the bill's days. */
export function modelOfBills(bills: readonly MeterBill[]): MeterModel {
  const { record, readings } = baselineOfBills(bills);
  return meterModel("bill", record, readings.length > 0 ? [typeModel("bills", readings, "bill")] : []);
}

function typeModel(type: DayType, readings: readonly MeterReading[], length: ReadingLength): DayTypeModel {
  const outdoorC = Float64Array.from(readings, (each) => each.outdoorC);
  const energyKwh = Float64Array.from(readings, (each) => each.energyKwh);
  return {
    type,
    readings: readings.map(({ date, outdoorC, energyKwh }) => ({ date, outdoorC, energyKwh })),
    choice: chooseModel({ outdoorC, energyKwh }, length),
  };
}

function meterModel(length: ReadingLength, record: MeterRecord, types: DayTypeModel[]): MeterModel {
  const findings = [...record.findings];
  for (const { type, readings, choice } of types) {
    if (choice.status === "ok") continue;
    // The best candidate's faults are the reason; those of the others stand in the table of candidates.
    findings.push({
      code: "no-model",
      severity: type === "other-days" ? "note" : "disqualifies",
      evidence: { type, readings: readings.length, tried: choice.candidates.map((each) => each.model.kind) },
    });
    if (type !== "other-days") findings.push(...(choice.candidates[0]?.faults ?? [tooFewTemperatures(readings)]));
  }
  const stops = types.length === 0 || findings.some((each) => each.severity === "disqualifies");
  return { status: stops ? "refused" : "ok", length, record, types, findings };
}

function tooFewTemperatures(readings: readonly MeterReading[]): MeterFinding {
  const temps = readings.map((each) => each.outdoorC);
  const spanK = temps.length > 0 ? Math.max(...temps) - Math.min(...temps) : 0;
  const evidence = { model: "2P", spanK, leastK: LEAST_TEMP_SPAN_K };
  return { code: "temperature-span-short", severity: "disqualifies", evidence };
}
