import type { Term, Working } from "@/lib/working/working";
import { coolingWing } from "../change-point/setpoint-shift";
import type { EnergyPerKelvin, Ranged, TypeFit } from "./kelvin-worth";
import type { DayType } from "./meter-model";
import { DAY_TYPE_WORDS } from "./meter-words";

/** A share with where it comes from, for the working. */
export type StatedShare = Ranged & Pick<Term, "label" | "origin" | "source" | "assumptionId" | "href">;

const SUFFIX: Record<DayType, string> = { "occupied-days": "o", "other-days": "n", bills: "b" };

/** The working of what a kelvin of setpoint is worth by the meter [kWh a year]. `year` says whose days were used. */
export function energyPerKelvinWorking(
  worth: EnergyPerKelvin,
  fits: readonly TypeFit[],
  shares: { area: StatedShare; cooling: StatedShare; sensible: StatedShare },
  about: { meter: string; year: string; href: string },
): Working {
  const response = responseWorking(worth.response, shares);
  const terms = worth.byType.map((each): Term => {
    const symbol = `E_${SUFFIX[each.type]}`;
    const typeFit = fits.find(({ year }) => year.type === each.type);
    const wing = typeFit && coolingWing(typeFit.fit.model);
    if (!typeFit || !wing) throw new Error("a saving without its fit");
    const { standardErrors } = typeFit.fit.errors;
    const slopeError = standardErrors.coolingSlope ?? standardErrors.rightSlope ?? 0;
    const changeError = standardErrors.coolingChangeC ?? standardErrors.changeC ?? 0;
    const label = `saving ${DAY_TYPE_WORDS[each.type].over}`;
    const source = `${typeFit.fit.model.kind} change-point model of ${about.meter}, ${typeFit.fit.goodness.n} readings`;
    const fitted = { origin: "measured" as const, source, href: about.href };
    const span = (value: number, error: number) => ({ low: value - 1.282 * error, high: value + 1.282 * error });
    return {
      symbol,
      label,
      value: each.savingKwh,
      unit: "kWh a year",
      origin: "computed",
      working: {
        formula: `${symbol} = b * (D_1 - D_2)`,
        terms: [
          {
            symbol: "b",
            label: "cooling slope, 80 % range by its standard error",
            value: wing.slopeKwhPerK,
            unit: "kWh/K·d",
            ...span(wing.slopeKwhPerK, slopeError),
            ...fitted,
          },
          {
            symbol: "D_1",
            label: "degree-days above the change point",
            value: each.degreeDays,
            unit: "K·d",
            origin: "computed",
            working: degreeDays("D_1", "T_o - T_cp", each.degreeDays, about.year, [
              {
                symbol: "T_cp",
                label: "change point, 80 % range by its standard error",
                value: wing.changeC,
                unit: "°C",
                ...span(wing.changeC, changeError),
                ...fitted,
              },
            ]),
          },
          {
            symbol: "D_2",
            label: "degree-days above the change point moved up",
            value: each.degreeDaysAfter,
            unit: "K·d",
            origin: "computed",
            working: degreeDays("D_2", "T_o - T_cp - κ * ΔT", each.degreeDaysAfter, about.year, [
              { symbol: "T_cp", label: "change point", value: wing.changeC, unit: "°C", ...fitted },
              {
                symbol: "κ",
                label: "kelvin of change point for a kelvin of setpoint",
                value: worth.response,
                unit: "K/K",
                origin: "computed",
                working: response,
              },
              {
                symbol: "ΔT",
                label: "setpoint raised by",
                value: 1,
                unit: "K",
                origin: "default",
                source: "by definition",
              },
            ]),
          },
        ],
        result: { symbol, label, value: each.savingKwh, unit: "kWh a year" },
      },
    };
  });
  return {
    formula: `E_K = ${terms.map((each) => each.symbol).join(" + ")}`,
    terms,
    result: {
      symbol: "E_K",
      label: "energy that one kelvin of cooling setpoint is worth",
      value: worth.savingKwh,
      unit: "kWh a year",
    },
    notes: [
      `80 % range ${Math.round(worth.range.p10)} to ${Math.round(worth.range.p90)} kWh: 4,000 draws of the shares' ranges and of the fit's standard error.`,
      "The slope is the meter's: plant efficiency, outdoor air, sun and fans are in it already.",
    ],
    source:
      "RP-1050 and ASHRAE Guideline 14 change-point models; a setpoint moves the change point and leaves the slope",
  };
}

function responseWorking(
  value: number,
  { area, cooling, sensible }: { area: StatedShare; cooling: StatedShare; sensible: StatedShare },
): Working {
  const term = (symbol: string, share: StatedShare): Term => ({ symbol, unit: "", ...share });
  return {
    formula: "κ = a * s_c * s_s",
    terms: [term("a", area), term("s_c", cooling), term("s_s", sensible)],
    result: { symbol: "κ", label: "kelvin of change point for a kelvin of setpoint", value, unit: "K/K" },
    notes: ["Only zones held by their cooling setpoint answer to it; zones at minimum airflow or in reheat do not."],
  };
}

const degreeDays = (symbol: string, difference: string, value: number, year: string, terms: Term[]): Working => ({
  formula: `${symbol} = sum(max(0, ${difference}))`,
  terms,
  result: { symbol, label: "degree-days of the year", value, unit: "K·d" },
  notes: [`Mean outdoor air temperatures of the days of ${year}.`],
});

/** The working of the money: energy at the price of a saved kWh. */
export function moneyPerKelvinWorking(
  energy: Working,
  range: { low: number; high: number },
  price: { perKwh: number; currency: string; share: StatedShare | null },
): Working {
  const perKwh: Term = {
    symbol: "p",
    label: price.share ? "blended price of electricity" : "marginal price of electricity",
    value: price.perKwh,
    unit: `${price.currency}/kWh`,
    origin: "entered",
    source: "settings of the building",
    href: "/settings",
  };
  const share: Term[] = price.share ? [{ symbol: "w", unit: "", ...price.share }] : [];
  return {
    formula: `C_K = E_K * p${price.share ? " * w" : ""}`,
    terms: [{ ...energy.result, origin: "computed", ...range, working: energy }, perKwh, ...share],
    result: {
      symbol: "C_K",
      label: "money that one kelvin of cooling setpoint is worth",
      value: energy.result.value * price.perKwh * (price.share?.value ?? 1),
      unit: `${price.currency} a year`,
    },
    notes: ["Energy only: a lower peak demand is not counted."],
  };
}
