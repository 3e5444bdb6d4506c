import { COMPONENT_LABELS, type ComponentId, type Tier } from "./assessment";
import { exact, type Quantity, type Step, type Sum, step, sum } from "./calculation/quantity";
import type { Plant } from "./plant";
import type { Row } from "./rows";

/** Energy of a component: electricity, bought heat, either or both. */
export type ComponentEnergy = { electric: Quantity | null; heat: Quantity | null };

export type Cell = ComponentEnergy & { row: Row; money: Step | Sum };

/** A component in one tier: the building's figure and how it falls to the rows; the cells add up to it in every draw. */
export type ComponentModel = ComponentEnergy & {
  id: ComponentId;
  money: Step | Sum;
  cells: readonly Cell[];
  /** The same component with other electricity in each cell, or in the whole, and its money worked out anew. */
  withElectricity(change: (electric: Quantity) => Quantity, plant: Plant): ComponentModel;
};

export type TierModel = {
  tier: Tier;
  components: ComponentModel[];
  total: Sum;
  /** How a model by zones or by weather hangs on the temperature of the zones; null where it does not say. */
  zoneAir: ZoneAirRise | null;
};

/** What zones at their targets would change that a meter's cooling slope answers to. */
export type ZoneAirRise = {
  /** Mean rise of the building's zone air over the season's hours, by the cooling setpoint and at minimum airflow [K]. */
  rise: Quantity;
  /** Share of the fan's electricity for excess air that goes while zones cool; null without such a component. */
  fanWhileCooling: Quantity | null;
};

/** Number of a component in the reference, as subscript of its symbols. */
export const NUMBERS: Record<ComponentId, string> = {
  "heater-energy": "1",
  "heat-removal": "2",
  "setpoint-screening": "0",
  setpoint: "3",
  deadband: "4a",
  reheat: "4b",
  fan: "5",
  demand: "6",
  complaints: "7",
};

const CONTRIBUTION_NOTE =
  "This is the figure with every input at its stated value. Its part of the headline is a little different: inputs with skewed ranges move the median of the total away from the stated sum, so the part is this component's mean in the draws whose total lies nearest the median, and those parts add up to the headline.";

/** Cost of a component's energy: electricity and bought heat at their prices. Heat without a price costs nothing here. */
export function costOf(
  id: ComponentId,
  energy: ComponentEnergy,
  plant: Plant,
  currency: string,
  notes?: string[],
): Step {
  const { electric, heat } = energy;
  const priced = heat && plant.heatPrice ? { heat, price: plant.heatPrice } : null;
  const samePrice = priced?.price === plant.electricityPrice;
  const c = `C_${NUMBERS[id]}`;
  const shared = { symbol: c, label: `cost of ${COMPONENT_LABELS[id]}`, unit: `${currency} a year`, notes };
  const p = plant.electricityPrice;
  if (electric && priced && samePrice) {
    return step({
      ...shared,
      formula: `${c} = (${electric.symbol} + ${priced.heat.symbol}) * p_e`,
      terms: [electric, priced.heat, p],
      compute: (e, q, price) => (e + q) * price,
    });
  }
  if (electric && priced) {
    return step({
      ...shared,
      formula: `${c} = ${electric.symbol} * p_e + ${priced.heat.symbol} * ${priced.price.symbol}`,
      terms: [electric, p, priced.heat, priced.price],
      compute: (e, price, q, heatPrice) => e * price + q * heatPrice,
    });
  }
  const electricity =
    electric ?? exact({ symbol: "E", label: "electricity", unit: "kWh", value: 0, origin: "computed" });
  return step({
    ...shared,
    notes: heat
      ? [...(notes ?? []), "The heat has no price in the building's settings and is left out of this cost."]
      : notes,
    formula: `${c} = ${electricity.symbol} * p_e`,
    terms: [electricity, p],
    compute: (e, price) => e * price,
  });
}

/** A component that is worked out row by row. */
export function componentOfCells(id: ComponentId, cells: readonly Cell[], currency: string): ComponentModel | null {
  if (cells.length === 0) return null;
  const n = NUMBERS[id];
  return {
    id,
    electric: sumOver(cells, (each) => each.electric, `E_${n}`, `electricity of ${COMPONENT_LABELS[id]}`),
    heat: sumOver(cells, (each) => each.heat, `Q_${n}`, `bought heat of ${COMPONENT_LABELS[id]}`),
    money: sum({
      symbol: `C_${n}`,
      label: `cost of ${COMPONENT_LABELS[id]}`,
      unit: `${currency} a year`,
      formula: `C_${n} = sum of the zones`,
      parts: cells.map((each) => ({
        symbol: rowSymbol(`C_${n}`, each.row),
        label: rowLabel(each.row),
        quantity: each.money,
      })),
      notes: [CONTRIBUTION_NOTE],
    }),
    cells,
    withElectricity: (change, plant) => {
      const changed = cells.map((cell): Cell => {
        const energy = { electric: cell.electric && change(cell.electric), heat: cell.heat };
        return { row: cell.row, ...energy, money: costOf(id, energy, plant, currency) };
      });
      return componentOfCells(id, changed, currency) as ComponentModel;
    },
  };
}

/** A component that is worked out for the whole building and falls to the rows by `shareOf`. */
export function componentOfBuilding(
  id: ComponentId,
  energy: ComponentEnergy,
  plant: Plant,
  currency: string,
  rows: readonly Row[],
  shareOf: (row: Row) => Quantity = areaShare,
): ComponentModel {
  const money = costOf(id, energy, plant, currency);
  const whole: Step = { ...money, notes: [...(money.notes ?? []), CONTRIBUTION_NOTE] };
  const cells = rows.map((row): Cell => {
    const share = shareOf(row);
    const part = step({
      symbol: "C_z",
      label: `${rowLabel(row)}, its part of the building's`,
      unit: money.unit,
      formula: `C_z = ${money.symbol} * ${share.symbol}`,
      terms: [whole, share],
      compute: (all, each) => all * each,
    });
    return { row, electric: null, heat: null, money: part };
  });
  return {
    id,
    ...energy,
    money: whole,
    cells,
    withElectricity: (change, plantThen) =>
      componentOfBuilding(
        id,
        { electric: energy.electric && change(energy.electric), heat: energy.heat },
        plantThen,
        currency,
        rows,
        shareOf,
      ),
  };
}

/** The percentage stands for these together (reference I, rule 3). */
const INSIDE_THE_PERCENTAGE: readonly ComponentId[] = ["setpoint", "deadband", "reheat", "fan"];

export function tierModel(
  tier: Tier,
  components: (ComponentModel | null)[],
  currency: string,
  zoneAir: ZoneAirRise | null = null,
): TierModel {
  const present = components.filter((each): each is ComponentModel => each !== null);
  const ids = present.map((each) => each.id);
  if (ids.includes("setpoint-screening") && ids.some((each) => INSIDE_THE_PERCENTAGE.includes(each)))
    throw new Error("a percentage a kelvin stands for setpoint, minimum airflow and fan: they cannot be added to it");
  return {
    tier,
    components: present,
    zoneAir,
    total: sum({
      symbol: "C",
      label: "cost of overcooling",
      unit: `${currency} a year`,
      formula: "C = sum of the components",
      parts: present.map((each) => ({
        symbol: `C_${NUMBERS[each.id]}`,
        label: COMPONENT_LABELS[each.id],
        quantity: each.money,
      })),
    }),
  };
}

export const rowSymbol = (base: string, row: Row): string => `${base.split("_")[0]}_{${row.code.replace(/[{}]/g, "")}}`;
export const rowLabel = (row: Row): string => (row.zoneId === null ? row.code : `zone ${row.code}`);

export const areaShare = (row: Row): Quantity =>
  exact({
    symbol: "a_z",
    label: `share of the floor area, ${rowLabel(row)}`,
    unit: "",
    value: row.areaShare,
    origin: row.areaOrigin,
    ...(row.zoneId === null ? {} : { href: "/zones" }),
  });

export function sumOver<T extends { row: Row }>(
  cells: readonly T[],
  of: (cell: T) => Quantity | null,
  symbol: string,
  label: string,
): Quantity | null {
  const parts = cells.flatMap((cell) => {
    const quantity = of(cell);
    return quantity ? [{ symbol: rowSymbol(symbol, cell.row), label: rowLabel(cell.row), quantity }] : [];
  });
  if (parts.length === 0) return null;
  const unit = parts[0]?.quantity.unit ?? "kWh";
  return sum({ symbol, label, unit, formula: `${symbol} = sum of the zones`, parts });
}
