import type { Term, Working } from "@/lib/working/working";
import type { LiveBuilding, SharedNumbers } from "../live-building";
import { SAVING_PARTS, type SavingPart } from "../live-picture";
import type { EnergySaved } from "./energy-saved";
import { LEFT_OUT_OF_A_PROMISE } from "./left-out";
import { bought } from "./money";
import { partEnergyWorking } from "./part-working";

/** Electricity saved on an occupied day of the season while the change stands: the parts of a year over the season's days. */
export function perDayWorking(
  building: LiveBuilding,
  saved: EnergySaved,
  stated: SharedNumbers,
  seasonDays: number,
): Working {
  const parts = (Object.keys(SAVING_PARTS) as SavingPart[]).filter(
    (part) => bought(saved.parts[part], building.isHeatElectric).electricKwh !== 0,
  );
  const terms = parts.map((part, k): Term => {
    const working = partEnergyWorking(building, saved, part, "electricKwh", stated);
    return { ...working.result, symbol: `X_{${k + 1}}`, origin: "computed", working };
  });
  const days: Term = {
    symbol: "D",
    label: "occupied days in the season",
    value: seasonDays,
    unit: "d",
    origin: "computed",
    source: "occupied hours of the building; holidays are not taken off",
    href: "/settings",
  };
  const sum = terms.reduce((total, each) => total + each.value, 0);
  return {
    formula:
      terms.length > 0 && seasonDays > 0 ? `e = (${terms.map(({ symbol }) => symbol).join(" + ")}) / D` : "e = 0",
    terms: terms.length > 0 && seasonDays > 0 ? [...terms, days] : [],
    result: {
      symbol: "e",
      label: "electricity saved on an occupied day of the season, while the change stands",
      value: seasonDays > 0 ? sum / seasonDays : 0,
      unit: "kWh a day",
    },
    notes: [LEFT_OUT_OF_A_PROMISE],
  };
}
