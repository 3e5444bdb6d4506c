import type { EnergyGroup } from "@/app/_components/charts/energy-scatter-config";
import type { FindingLine } from "@/app/_components/ui/findings-list";
import type { ChangePointModel } from "@/lib/energy-model/change-point/change-point-model";
import type { Candidate } from "@/lib/energy-model/change-point/choose-model";
import { meterFindingWords } from "@/lib/energy-model/findings";
import type { MeterFinding } from "@/lib/energy-model/meter/meter-finding";
import type { DayTypeModel, MeterModel } from "@/lib/energy-model/meter/meter-model";
import { DAY_TYPE_WORDS } from "@/lib/energy-model/meter/meter-words";
import type { readBills } from "@/lib/services/bills/bills";
import type { Building } from "@/lib/services/buildings/find";
import type { EnergyMeter } from "@/lib/services/meter/read";
import { dayNumberFromLocalDate, localDateFromDayNumber } from "@/lib/time/civil-date";
import { formatNumber, formatTemperature } from "@/lib/units/format";

export type Shown = Pick<Building, "temperatureUnit">;
type ShownMeter = NonNullable<EnergyMeter["shown"]>;

/** Energy of an interval by a model; as in `lib/energy-model`, which a page does not run: here it only draws the line. */
type Corner = { outdoorC: number; energyKwh: number };

/** The page's one sentence. */
export function meterLede({ shown }: EnergyMeter): string {
  if (!shown)
    return "Bring in the building's electricity meter, and this page says what a kelvin of cooling setpoint is worth by it.";
  const { name, model, worth } = shown;
  if (!model) return `${name} has nothing to be set against: no outdoor air temperature is recorded.`;
  const record = `${model.record.from} to ${model.record.to}, ${model.record.usable} of ${model.record.count} ${model.length === "bill" ? "bills" : "days"}`;
  if (model.status !== "ok") return `${name}, ${record}: no model may be used yet. What is missing stands below.`;
  return worth
    ? `What one kelvin (1.8 °F) of cooling setpoint is worth in ${worth.year} by ${name}, fitted to ${record}.`
    : `${name}, ${record}: the model does not say what a setpoint is worth. Why stands below.`;
}

/** Findings in words, those of the data and those of the models. */
export const meterFindingLines = (findings: readonly MeterFinding[], { temperatureUnit }: Shown): FindingLine[] =>
  findings.map((finding, i) => {
    const { what, action } = meterFindingWords(finding, temperatureUnit);
    return { key: `${finding.code}-${i}`, severity: finding.severity, sentence: what, action };
  });

/** The candidate whose line is drawn and whose figures are shown: the chosen one, else the one that comes closest. */
const shownCandidate = ({ choice }: DayTypeModel): Candidate | undefined =>
  choice.status === "ok" ? choice.chosen : choice.candidates[0];

/** Groups of the picture. A refused model has no line: a line would be read as a result. */
export function energyGroups({ types, status }: MeterModel): EnergyGroup[] {
  return types.map(({ type, readings, choice }) => ({
    name: DAY_TYPE_WORDS[type].name,
    points: readings.map(({ outdoorC, energyKwh }) => ({ outdoorC, energyKwh })),
    line: status === "ok" && choice.status === "ok" ? corners(choice.chosen) : [],
  }));
}

/** Where a model's line begins, bends and ends within its readings. */
function corners({ model, fittedC: { lowC, highC } }: Candidate): Corner[] {
  const end = (outdoorC: number, change: number, slope: number): Corner => ({
    outdoorC,
    energyKwh: model.base + slope * Math.abs(outdoorC - change),
  });
  const bend = (outdoorC: number): Corner => ({ outdoorC, energyKwh: model.base });
  switch (model.kind) {
    case "2P":
      return [lowC, highC].map((outdoorC) => ({ outdoorC, energyKwh: model.base + model.slope * outdoorC }));
    case "3PC":
      return [bend(lowC), bend(model.coolingChangeC), end(highC, model.coolingChangeC, model.coolingSlope)];
    case "3PH":
      return [end(lowC, model.heatingChangeC, model.heatingSlope), bend(model.heatingChangeC), bend(highC)];
    case "4P":
      return [
        end(lowC, model.changeC, -model.leftSlope),
        bend(model.changeC),
        end(highC, model.changeC, model.rightSlope),
      ];
    case "5P":
      return [
        end(lowC, model.heatingChangeC, model.heatingSlope),
        bend(model.heatingChangeC),
        bend(model.coolingChangeC),
        end(highC, model.coolingChangeC, model.coolingSlope),
      ];
  }
}

export type ModelLine = {
  key: string;
  type: string;
  kind: string;
  base: string;
  coolingSlope: string;
  coolingChange: string;
  heatingSlope: string;
  heatingChange: string;
};

/** Values of the models in use, with standard errors, in the building's units; a day type without one says so. */
export function modelLines({ types, status }: MeterModel, { temperatureUnit: unit }: Shown): ModelLine[] {
  const perK = unit === "F" ? 1.8 : 1;
  return types.map(({ type, choice }) => {
    const key = type;
    const name = DAY_TYPE_WORDS[type].name;
    if (status !== "ok" || choice.status !== "ok") {
      const none = { base: "", coolingSlope: "", coolingChange: "", heatingSlope: "", heatingChange: "" };
      return { key, type: name, kind: "no model", ...none };
    }
    const { model, errors } = choice.chosen;
    const { standardErrors: se } = errors;
    const slope = (value: number | undefined, error: number | undefined): string =>
      value === undefined ? "" : `${figure(value / perK)} ± ${figure((error ?? 0) / perK)}`;
    const change = (tempC: number | undefined, error: number | undefined): string =>
      tempC === undefined
        ? ""
        : `${formatTemperature(tempC, unit).value} ± ${formatNumber((error ?? 0) * perK, { decimals: 1 })}`;
    const cooling = coolingOf(model);
    const heating = heatingOf(model);
    return {
      key,
      type: name,
      kind: model.kind,
      base: formatNumber(model.base, { decimals: 0 }),
      coolingSlope: slope(cooling.slope, se.coolingSlope ?? se.rightSlope ?? se.slope),
      coolingChange: change(cooling.changeC, se.coolingChangeC ?? se.changeC),
      heatingSlope: slope(heating.slope, se.heatingSlope ?? se.leftSlope),
      heatingChange: change(heating.changeC, se.heatingChangeC ?? se.changeC),
    };
  });
}

const coolingOf = (model: ChangePointModel): { slope?: number; changeC?: number } => {
  if (model.kind === "2P") return { slope: model.slope };
  if (model.kind === "3PC" || model.kind === "5P") return { slope: model.coolingSlope, changeC: model.coolingChangeC };
  return model.kind === "4P" ? { slope: model.rightSlope, changeC: model.changeC } : {};
};

const heatingOf = (model: ChangePointModel): { slope?: number; changeC?: number } => {
  if (model.kind === "3PH" || model.kind === "5P") return { slope: model.heatingSlope, changeC: model.heatingChangeC };
  return model.kind === "4P" ? { slope: -model.leftSlope, changeC: model.changeC } : {};
};

export type CandidateLine = {
  key: string;
  type: string;
  kind: string;
  readings: string;
  cvRmse: string;
  nmbe: string;
  r2: string;
  adjustedR2: string;
  rho: string;
  effective: string;
  verdict: string;
};

/** Every model that was tried, by day type, the best adjusted R² first, with why it was not taken. */
export function candidateLines({ types, status }: MeterModel, { temperatureUnit }: Shown): CandidateLine[] {
  return types.flatMap((typeModel) =>
    typeModel.choice.candidates.map((candidate): CandidateLine => {
      const { model, goodness, faults } = candidate;
      const taken = typeModel.choice.status === "ok" && shownCandidate(typeModel)?.model.kind === model.kind;
      return {
        key: `${typeModel.type}-${model.kind}`,
        type: DAY_TYPE_WORDS[typeModel.type].name,
        kind: model.kind,
        readings: String(goodness.n),
        cvRmse: percent(goodness.cvRmse),
        nmbe: formatNumber(100 * goodness.nmbe, { decimals: 3 }),
        r2: formatNumber(goodness.r2, { decimals: 3 }),
        adjustedR2: formatNumber(goodness.adjustedR2, { decimals: 3 }),
        rho: formatNumber(goodness.rho, { decimals: 2 }),
        effective: formatNumber(goodness.effectiveN, { decimals: 0 }),
        verdict: taken
          ? status === "ok"
            ? "taken"
            : "the best of them, but the record is not enough for any"
          : faults.map((fault) => meterFindingWords(fault, temperatureUnit).what).join(" ") ||
            "could be used; another has the higher adjusted R²",
      };
    }),
  );
}

export type ReadingLine = { key: string; date: string; type: string; outdoor: string; energy: string };

/** The readings of the picture as a table, by date. */
export function readingLines({ types }: MeterModel, { temperatureUnit }: Shown): ReadingLine[] {
  return types
    .flatMap(({ type, readings }) =>
      readings.map(({ date, outdoorC, energyKwh }) => ({
        key: date,
        date,
        type: DAY_TYPE_WORDS[type].name,
        outdoor: formatTemperature(outdoorC, temperatureUnit).value,
        energy: formatNumber(energyKwh, { decimals: 0 }),
      })),
    )
    .sort((a, b) => (a.date < b.date ? -1 : 1));
}

export type BillLine = {
  id: number;
  from: string;
  to: string;
  days: string;
  energy: string;
  demand: string;
  charges: string;
};

/** The building's bills as they were brought in, the newest first. */
export const billLines = (bills: ReturnType<typeof readBills>): BillLine[] =>
  bills
    .map((bill) => {
      const [from, until] = [bill.fromDate, bill.untilDate].map((date) => dayNumberFromLocalDate(date) ?? 0) as [
        number,
        number,
      ];
      const optional = (value: number | null, decimals: number): string =>
        value === null ? "" : formatNumber(value, { decimals });
      return {
        id: bill.id,
        from: bill.fromDate,
        to: localDateFromDayNumber(until - 1),
        days: String(until - from),
        energy: formatNumber(bill.energyKwh, { decimals: 0 }),
        demand: optional(bill.billedDemandKw, 1),
        charges: optional(bill.charges, 2),
      };
    })
    .reverse();

/** What the picture shows, for those who do not see it. */
export function scatterLabel({ name, model }: ShownMeter): string {
  const hasLine = model?.status === "ok" && model.types.some(({ choice }) => choice.status === "ok");
  const fitted = hasLine ? " with the fitted line" : "";
  return `${name}: energy of a ${model?.length === "bill" ? "mean day of each bill" : "day"} against mean outdoor air temperature${fitted}`;
}

const figure = (value: number): string => formatNumber(value, { significantDigits: 3 });
const percent = (share: number): string => formatNumber(100 * share, { decimals: 1 });
