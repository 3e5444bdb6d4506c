import { currencyDecimals } from "@/lib/money/money";
import { LEVER_SCALES, LEVERS, type Lever } from "@/lib/proposals/lever";
import { coolingMonths } from "@/lib/proposals/season-calendar";
import { clockOf } from "@/lib/proposals/window-words";
import type { Building } from "@/lib/services/buildings/find";
import type { Proposal } from "@/lib/services/proposals/find";
import type { ProposalGround } from "@/lib/services/proposals/ground";
import { formatTemperatureDifference, type TemperatureUnit } from "@/lib/units/format";
import { amountField, nameField, ownAmountField, VARIANT_PLACES, zoneField } from "./form";

export type FormValues = Record<string, string>;

/** Levers that a verdict of the diagnosis proposes. */
const LEVERS_OF_VERDICT: Partial<Record<string, readonly Lever[]>> = {
  "setpoint-first": ["cooling-setpoint"],
  "minimum-airflow-first": ["minimum-airflow"],
  "both-minimum-first": ["minimum-airflow", "cooling-setpoint"],
  "fault-first": ["fault-fix"],
  "personal-need": ["personal-device"],
};

/** Amounts to begin with: a half, one and two kelvin, and as much less air. Common practice, no source. */
const BEGINNINGS: readonly { name: string; kelvin: number; airflowPct: number }[] = [
  { name: "Half a kelvin", kelvin: 0.5, airflowPct: 20 },
  { name: "One kelvin", kelvin: 1, airflowPct: 40 },
  { name: "Two kelvin", kelvin: 2, airflowPct: 60 },
];

export type ZoneChoice = { zoneId: number; code: string; floor: string; verdict: string };

/**
 * A new proposal as the diagnosis would have it. `only` names zones to begin with, where a filter chose them; `seed` is what
 * alternate weeks are drawn by, stored with the proposal.
 */
export function beginningValues(
  building: Pick<Building, "temperatureUnit" | "name">,
  { building: live, verdicts }: ProposalGround,
  only: readonly number[] | null,
  seed = 1,
): FormValues {
  const zones = verdicts.flatMap(({ zoneId, verdict }): [string, string][] => {
    if (only && !only.includes(zoneId)) return [];
    const levers = LEVERS_OF_VERDICT[verdict] ?? (only ? ["cooling-setpoint"] : []);
    return levers.length > 0 ? [[zoneField(zoneId), levers.join(",")]] : [];
  });
  const amounts = VARIANT_PLACES.flatMap((place): [string, string][] => {
    const begin = BEGINNINGS[place];
    const amount = (lever: Lever): number =>
      lever === "cooling-setpoint" ? (begin?.kelvin ?? 0) : lever === "minimum-airflow" ? (begin?.airflowPct ?? 0) : 0;
    return [
      [nameField(place), begin?.name ?? ""],
      ...LEVERS.map((lever): [string, string] => [amountField(place, lever), String(amount(lever))]),
    ];
  });
  const season = live && coolingMonths(live.calendar);
  return {
    title: "",
    reason: "",
    seasonFromMonth: String(season?.fromMonth ?? 5),
    seasonToMonth: String(season?.toMonth ?? 9),
    from: "07:00",
    to: "18:00",
    investment: "0",
    chosen: "1",
    trial: "steps",
    stepKPerWeek: "0.5",
    hotReportsPerWeek: "3",
    dissatisfiedPct: "15",
    zoneAirTemp: building.temperatureUnit === "F" ? "78" : "25.5",
    pairs: "8",
    seed: String(seed),
    beginsOn: "",
    notice: `From next Monday the cooling setpoint goes up in steps of half a kelvin a week. Tell us by the comfort report of your desk if you are too warm or too cold: we look at every report, and stop the trial when the limits that were set are reached. ${building.name}, facilities.`,
    ...Object.fromEntries(zones),
    ...Object.fromEntries(amounts),
  };
}

/** A proposal on record as the form has it: the amount that most zones of a lever have is the variant's, others are their own. */
export function valuesOf(
  { row, variants }: Proposal,
  building: Pick<Building, "temperatureUnit" | "currency">,
): FormValues {
  const { plan } = row;
  const limitC = plan.stopRules.zoneAirTempC;
  const zones = new Map<number, Set<Lever>>();
  const values: FormValues = {
    title: row.title,
    reason: row.reason,
    seasonFromMonth: String(row.seasonFromMonth),
    seasonToMonth: String(row.seasonToMonth),
    from: clockOf(row.fromMinute),
    to: clockOf(row.toMinute),
    investment: String(row.investmentMinor / 10 ** currencyDecimals(building.currency)),
    chosen: String(row.chosenPosition),
    trial: plan.switchback ? "switchback" : "steps",
    stepKPerWeek: String(plan.stepKPerWeek),
    hotReportsPerWeek: String(plan.stopRules.hotReportsPerWeek),
    dissatisfiedPct: String(plan.stopRules.dissatisfiedPct),
    zoneAirTemp: String(Number((building.temperatureUnit === "F" ? limitC * 1.8 + 32 : limitC).toFixed(1))),
    pairs: String(plan.switchback?.pairs ?? 8),
    seed: String(plan.switchback?.seed ?? 1),
    beginsOn: plan.switchback?.beginsOn ?? "",
    notice: plan.notice,
  };
  for (const place of VARIANT_PLACES) {
    const variant = variants.find((each) => each.position === place);
    values[nameField(place)] = variant?.name ?? "";
    for (const lever of LEVERS) values[amountField(place, lever)] = "0";
    for (const { zoneId, lever } of variant?.levers ?? [])
      zones.set(zoneId, (zones.get(zoneId) ?? new Set()).add(lever));
  }
  for (const { position, levers } of variants)
    for (const lever of LEVERS) {
      const amounts = new Map(levers.flatMap((each) => (each.lever === lever ? [[each.zoneId, each.amount]] : [])));
      const usual = mostFrequent([...amounts.values()]);
      values[amountField(position, lever)] = String(usual);
      for (const [zoneId, chosen] of zones) {
        const amount = amounts.get(zoneId) ?? 0;
        if (chosen.has(lever) && amount !== usual) values[ownAmountField(position, zoneId, lever)] = String(amount);
      }
    }
  for (const [zoneId, levers] of zones) values[zoneField(zoneId)] = [...levers].join(",");
  return values;
}

/** The amount that comes up most, of several the first; 0 of none. */
function mostFrequent(amounts: readonly number[]): number {
  const times = (amount: number): number => amounts.filter((each) => each === amount).length;
  return amounts.reduce((best, each) => (times(each) > times(best) ? each : best), amounts[0] ?? 0);
}

/** "Cooling setpoint raised by 1 K in 12 zones", "by 0.5 to 1.5 K" where zones have amounts of their own; kelvins as the building reads them. */
export function leverSentences(
  levers: Proposal["variants"][number]["levers"],
  temperatureUnit: TemperatureUnit,
): string[] {
  return LEVERS.flatMap((lever) => {
    const own = levers.filter((each) => each.lever === lever);
    if (own.length === 0) return [];
    const { label, amount, unit } = LEVER_SCALES[lever];
    const zones = own.length === 1 ? "1 zone" : `${own.length} zones`;
    const [least, most] = [Math.min(...own.map((each) => each.amount)), Math.max(...own.map((each) => each.amount))];
    const span = amountWords(least, most, unit, temperatureUnit);
    const [by, ...of] = amount.split(", ");
    return [[`${label} ${by} ${span}`, ...of, `in ${zones}`].join(" ")];
  });
}

/** "1 K", "0.4 to 1 K"; kelvins, in which levers are set, also on the scale of a building that reads Fahrenheit. */
export function amountWords(least: number, most: number, unit: string, temperatureUnit: TemperatureUnit): string {
  const span = (of: (amount: number) => string): string => (least === most ? of(most) : `${of(least)} to ${of(most)}`);
  const plain = `${span(String)}${unit ? `\u2009${unit}` : ""}`;
  if (unit !== "K" || temperatureUnit === "C") return plain;
  return `${plain} (${span((amount) => formatTemperatureDifference(amount, "F").value)}\u00a0°F)`;
}

/** Whether the variant that is proposed lowers a minimum airflow. */
export const proposesLowerMinimum = ({ row, variants }: Proposal): boolean =>
  variants.some(
    (each) => each.position === row.chosenPosition && each.levers.some(({ lever }) => lever === "minimum-airflow"),
  );
