import { changePointSaving, coolingWing } from "@/lib/energy-model/change-point/setpoint-shift";
import type { DayType } from "@/lib/energy-model/meter/meter-model";
import { DAY_TYPE_WORDS } from "@/lib/energy-model/meter/meter-words";
import { outdoorHours } from "@/lib/energy-model/outdoor-hours";
import type { MeteredCooling, MeteredDays } from "../assessment-input";
import { exact, type Input, type Quantity, type Step, type Sum, step, sum } from "../calculation/quantity";
import type { Plant } from "../plant";

const SUFFIX: Record<DayType, string> = { "occupied-days": "o", "other-days": "n", bills: "b" };

/** Half the width of a symmetric triangle in standard deviations: it has the variance a²/6 (JCGM 100:2008, 4.3.9). */
const TRIANGLE = Math.sqrt(6);

/**
 * Electricity a year that a warmer building saves by its meter: the change point of each day type moves up with the mean
 * zone air, but for moisture and for floor area whose setpoint stays, and the cooling slope stays as it is (reference
 * C-ii, Q3). The slope has plant efficiency, outdoor air, sun and the fans that follow the load in it.
 */
export function meteredSaving(meter: MeteredCooling, rise: Quantity, plant: Plant): Sum {
  const shift = step({
    symbol: "r",
    label: "rise of the change points",
    unit: "K",
    formula: `r = a * s_s * ${rise.symbol}`,
    terms: [
      plant.assumed.shared("setpoint-floor-area-share", "a"),
      plant.assumed.shared("sensible-coil-load-share", "s_s"),
      rise,
    ],
    compute: (area, sensible, each) => area * sensible * each,
    notes: [
      "The balance temperature of a building moves with its zone air, one for one for sensible heat (steady heat balance).",
    ],
  });
  return sum({
    symbol: "S",
    label: "electricity a year that zone air at the target saves by the meter",
    unit: "kWh a year",
    formula: `S = ${meter.days.map((each) => `S_${SUFFIX[each.type]}`).join(" + ")}`,
    parts: meter.days.map((days) => ({
      symbol: `S_${SUFFIX[days.type]}`,
      label: DAY_TYPE_WORDS[days.type].name.toLowerCase(),
      quantity: savingOfDays(meter, days, shift),
    })),
    notes: [`Daily means of ${meter.year}.`],
  });
}

function savingOfDays(meter: MeteredCooling, { type, fit, readings, outdoorC, daysEach }: MeteredDays, r: Step): Step {
  const wing = coolingWing(fit.model);
  if (!wing) throw new Error("a model without a cooling change point was let through");
  const year = outdoorHours(outdoorC, daysEach);
  const name = DAY_TYPE_WORDS[type].name.toLowerCase();
  const fitted = (symbol: string, label: string, value: number, unit: string): Input =>
    exact({
      symbol,
      label: `${label}, ${name}`,
      unit,
      value,
      origin: "measured",
      source: `${fit.model.kind} change-point model of ${meter.meter}, ${readings} readings`,
      href: meter.href,
    });
  const changePoint = fitted("T_cp", "cooling change point", wing.changeC, "°C");
  const degreeDays = (symbol: string, label: string, difference: string, terms: Quantity[]): Step =>
    step({
      symbol,
      label: `${label}, ${name}`,
      unit: "K·d",
      formula: `${symbol} = sum of max(0, ${difference}) over the days`,
      terms,
      compute: (changeC, riseK = 0) => year.degreeHours(changeC + riseK),
    });
  const s = `S_${SUFFIX[type]}`;
  return step({
    symbol: s,
    label: `saving by the meter, ${name}`,
    unit: "kWh a year",
    formula: `${s} = max(0, b * (D_1 - D_2) + z * u)`,
    terms: [
      fitted("b", "cooling slope", wing.slopeKwhPerK, "kWh/K·d"),
      degreeDays("D_1", "degree-days above the change point", "T_o - T_cp", [changePoint]),
      degreeDays("D_2", "degree-days above the change point moved up", "T_o - T_cp - r", [changePoint, r]),
      {
        ...fitted("z", "error of the fit, in standard errors", 0, ""),
        id: `meter-fit/${type}`,
        group: { id: "meter-fit", label: "fit of the meter's change-point models" },
        low: -TRIANGLE,
        high: TRIANGLE,
      },
      step({
        symbol: "u",
        label: `standard error of the saving by the covariance of slope and change point, ${name}`,
        unit: "kWh a year",
        formula: "u = standard error of b * (D_1 - D_2) over the days",
        terms: [r],
        compute: (riseK) => changePointSaving(fit, year, riseK)?.standardErrorKwh ?? 0,
        source: "covariance of the least-squares fit, widened for autocorrelated residuals (Reddy & Claridge 2000)",
      }),
    ],
    compute: (slope, now, then, error, standardError) => Math.max(0, slope * (now - then) + error * standardError),
  });
}
