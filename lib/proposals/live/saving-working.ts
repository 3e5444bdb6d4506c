import type { Term, Working } from "@/lib/working/working";
import type { LiveBuilding, SharedName, SharedNumbers } from "../live-building";
import { SAVING_PARTS, type SavingPart } from "../live-picture";
import type { EnergySaved } from "./energy-saved";
import { bought, keptShare, type Totals } from "./money";
import { partEnergyWorking } from "./part-working";

const PARTS = Object.keys(SAVING_PARTS) as SavingPart[];

/** The workings of a variant's totals: sums over the parts, each of them of the zones. */
export function savingWorkings(
  building: LiveBuilding,
  saved: EnergySaved,
  stated: SharedNumbers,
): Record<keyof Totals, Working> {
  const kwh = (kind: "electricKwh" | "heatKwh"): Working => {
    const isElectric = kind === "electricKwh";
    const symbol = isElectric ? "E" : "Q";
    const used = PARTS.filter((part) => bought(saved.parts[part], building.isHeatElectric)[kind] !== 0);
    const terms = used.map((part): Term => keptTerm(building, saved, stated, part, kind));
    return {
      formula: terms.length > 0 ? `${symbol} = sum of the parts` : `${symbol} = 0`,
      terms,
      result: {
        symbol,
        label: isElectric ? "electricity saved in the first year" : "heat bought less in the first year",
        value: terms.reduce((sum, each) => sum + each.value, 0),
        unit: "kWh a year",
      },
      notes: ["Demand charges are not counted. First order: rises of zone air times heat loss, hours and plant."],
    };
  };
  const electric = kwh("electricKwh");
  const heat = kwh("heatKwh");
  const joined = (result: Omit<Working["result"], "value">, of: "money" | "emissions"): Working => {
    const perElectric = of === "money" ? "electricityPrice" : "electricityEmissions";
    const terms: Term[] = [resultTerm(electric), building.shared[perElectric].term];
    let value = electric.result.value * stated[perElectric];
    let formula = `${result.symbol} = E * ${building.shared[perElectric].term.symbol}`;
    const heatTerm = of === "money" ? heatPriceTerm(building) : building.shared.heatEmissions.term;
    if (heat.result.value !== 0 && heatTerm) {
      terms.push(resultTerm(heat), heatTerm);
      formula += ` + Q * ${heatTerm.symbol}`;
      value += heat.result.value * heatTerm.value;
    }
    const notes =
      of === "money" && heat.result.value !== 0 && !heatTerm
        ? ["Heat has no price in the building's settings: it is counted in kWh only."]
        : [];
    return { formula, terms, result: { ...result, value }, notes };
  };
  return {
    electricKwh: electric,
    heatKwh: heat,
    saving: joined({ symbol: "S", label: "saving of the first year", unit: `${building.currency} a year` }, "money"),
    emissionsKgCo2: joined({ symbol: "M", label: "CO₂ avoided in the first year", unit: "kg a year" }, "emissions"),
  };
}

function keptTerm(
  building: LiveBuilding,
  saved: EnergySaved,
  stated: SharedNumbers,
  part: SavingPart,
  kind: "electricKwh" | "heatKwh",
): Term {
  const own = partEnergyWorking(building, saved, part, kind, stated);
  const kept = keptShare(part, stated);
  const value = kept * own.result.value;
  const symbol = `${kind === "electricKwh" ? "E" : "Q"}_${PARTS.indexOf(part) + 1}`;
  const label = SAVING_PARTS[part];
  const working: Working =
    kept === 1
      ? own
      : {
          formula: `${symbol} = r_s * ${own.result.symbol}`,
          terms: [shared(building, "changeKeptFraction"), resultTerm(own)],
          result: { symbol, label: `${label}, on the average of the first year`, value, unit: "kWh a year" },
        };
  return { symbol, label, value, unit: "kWh a year", origin: "computed", working };
}

const shared = (building: LiveBuilding, name: SharedName): Term => building.shared[name].term;

export const resultTerm = (working: Working): Term => ({
  ...working.result,
  origin: "computed",
  working,
});

const heatPriceTerm = ({ heatPricePerKwh, currency }: LiveBuilding): Term | null =>
  heatPricePerKwh === null
    ? null
    : {
        symbol: "p_h",
        label: "price of bought heat",
        value: heatPricePerKwh,
        unit: `${currency}/kWh`,
        origin: "entered",
        source: "building settings",
        href: "/settings",
      };
