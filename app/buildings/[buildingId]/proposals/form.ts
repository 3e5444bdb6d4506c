import { choiceOf, numberOf, type PostedValues, textOf } from "@/app/_server/form-fields";
import { type ActingWindow, ALL_YEAR } from "@/lib/proposals/acting-window";
import { LEVERS, type Lever, type ZoneLever } from "@/lib/proposals/lever";
import type { ProposalInput } from "@/lib/services/proposals/proposal-input";

export const VARIANT_PLACES = [0, 1, 2, 3] as const;

export const zoneField = (zoneId: number): string => `zone-${zoneId}`;
export const amountField = (place: number, lever: Lever): string => `amount-${place}-${lever}`;
/** A zone's own amount; empty where the variant's holds. */
export const ownAmountField = (place: number, zoneId: number, lever: Lever): string =>
  `own-${place}-${zoneId}-${lever}`;
export const nameField = (place: number): string => `name-${place}`;

/** Levers chosen for each zone: its boxes have one name. */
function zonesOf(values: PostedValues): { zoneId: number; levers: Lever[] }[] {
  return Object.keys(values).flatMap((key) => {
    const match = /^zone-(\d+)$/.exec(key);
    if (!match) return [];
    const chosen = textOf(values, key).split(",");
    return [{ zoneId: Number(match[1]), levers: LEVERS.filter((lever) => chosen.includes(lever)) }];
  });
}

/** The levers of one variant: its amounts in each zone that has the lever, or the zone's own. */
export function leversOf(values: PostedValues, place: number): ZoneLever[] {
  return zonesOf(values).flatMap(({ zoneId, levers }) =>
    levers.map((lever) => ({
      zoneId,
      lever,
      amount:
        numberOf(values, ownAmountField(place, zoneId, lever)) ?? numberOf(values, amountField(place, lever)) ?? 0,
    })),
  );
}

export type ZonePair = { zoneId: number; lever: Lever };

/** Zones and levers that are ticked, in the order of the form. */
export const chosenPairs = (values: PostedValues): ZonePair[] =>
  zonesOf(values).flatMap(({ zoneId, levers }) => levers.map((lever) => ({ zoneId, lever })));

/** Season and hours as they stand in the form; what cannot be read counts as the whole day or year until it is put right. */
export function windowOf(values: PostedValues): ActingWindow {
  const monthOr = (name: string, otherwise: number): number => {
    const month = Number(textOf(values, name));
    return Number.isInteger(month) && month >= 1 && month <= 12 ? month : otherwise;
  };
  const [from, to] = [minuteOf(textOf(values, "from")), minuteOf(textOf(values, "to"))];
  const hours = from < to ? { fromMinute: from, toMinute: to } : ALL_YEAR;
  return {
    seasonFromMonth: monthOr("seasonFromMonth", 1),
    seasonToMonth: monthOr("seasonToMonth", 12),
    fromMinute: hours.fromMinute,
    toMinute: hours.toMinute,
  };
}

/** Places of the variants in use: those with a name. */
export const usedPlaces = (values: PostedValues): number[] =>
  VARIANT_PLACES.filter((place) => textOf(values, nameField(place)) !== "");

/** Posted fields to what the use-case takes. Temperatures in °C or °F as the building shows them. */
export function proposalInputFromForm(values: PostedValues, unit: "C" | "F"): ProposalInput {
  const places = usedPlaces(values);
  const limit = numberOf(values, "zoneAirTemp") ?? Number.NaN;
  return {
    title: textOf(values, "title"),
    reason: textOf(values, "reason"),
    seasonFromMonth: Number(textOf(values, "seasonFromMonth")),
    seasonToMonth: Number(textOf(values, "seasonToMonth")),
    fromMinute: minuteOf(textOf(values, "from")),
    toMinute: minuteOf(textOf(values, "to")),
    investment: numberOf(values, "investment") ?? 0,
    plan: {
      stepKPerWeek: numberOf(values, "stepKPerWeek") ?? Number.NaN,
      stopRules: {
        hotReportsPerWeek: numberOf(values, "hotReportsPerWeek") ?? Number.NaN,
        dissatisfiedPct: numberOf(values, "dissatisfiedPct") ?? Number.NaN,
        zoneAirTempC: unit === "F" ? (limit - 32) / 1.8 : limit,
      },
      switchback:
        choiceOf(values, "trial") === "switchback"
          ? {
              pairs: numberOf(values, "pairs") ?? Number.NaN,
              seed: numberOf(values, "seed") ?? 1,
              beginsOn: textOf(values, "beginsOn"),
            }
          : null,
      notice: textOf(values, "notice"),
    },
    chosenPosition: places.indexOf(Number(textOf(values, "chosen") || "0")),
    variants: places.map((place) => ({
      name: textOf(values, nameField(place)),
      levers: amountsGiven(values, place),
    })),
  };
}

const amountsGiven = (values: PostedValues, place: number): ZoneLever[] =>
  leversOf(values, place).filter((each) => each.amount !== 0);

const minuteOf = (text: string): number => {
  const match = /^(\d{1,2}):(\d{2})$/.exec(text);
  return match ? Number(match[1]) * 60 + Number(match[2]) : Number.NaN;
};

const FIELD_OF: Record<string, string> = {
  fromMinute: "from",
  toMinute: "to",
  "plan.stepKPerWeek": "stepKPerWeek",
  "plan.stopRules.hotReportsPerWeek": "hotReportsPerWeek",
  "plan.stopRules.dissatisfiedPct": "dissatisfiedPct",
  "plan.stopRules.zoneAirTempC": "zoneAirTemp",
  "plan.switchback.pairs": "pairs",
  "plan.switchback.seed": "seed",
  "plan.switchback.beginsOn": "beginsOn",
  "plan.notice": "notice",
  chosenPosition: "chosen",
};

/** A refusal's paths as the names of the form's fields, among what was posted. */
export function fieldErrorsOf(
  errors: Readonly<Record<string, string>>,
  values: PostedValues = {},
): Record<string, string> {
  const places = usedPlaces(values);
  const named = Object.entries(errors).map(([path, message]): [string, string] => {
    const variant = /^variants(?:\.(\d)(?:\.levers\.(\d+))?)?/.exec(path);
    if (!variant) return [FIELD_OF[path] ?? path, message];
    const place = places[Number(variant[1] ?? 0)] ?? Number(variant[1] ?? 0);
    const at = variant[2] === undefined ? undefined : amountsGiven(values, place)[Number(variant[2])];
    if (!at) return [nameField(place), message];
    const own = ownAmountField(place, at.zoneId, at.lever);
    return [textOf(values, own) === "" ? nameField(place) : own, message];
  });
  return Object.fromEntries(named);
}
