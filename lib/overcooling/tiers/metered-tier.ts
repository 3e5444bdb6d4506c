import type { AssessmentInput, MeteredCooling } from "../assessment-input";
import { exact, type Quantity, type Step, step, sum } from "../calculation/quantity";
import { type ComponentModel, NUMBERS, type TierModel, tierModel, type ZoneAirRise } from "../component-model";
import type { Plant } from "../plant";
import { meteredSaving } from "./metered-cooling";

/** A component with the share of its electricity that the meter's cooling slope answers for. */
type InTheMeter = { component: ComponentModel; electric: Quantity; share: Quantity };

/**
 * Tier 3: what follows the zone air is what the meter says, and the model below it only splits it over components and
 * zones; adding the two up would count the same kWh twice (reference I, rule 4). That is the electricity of setpoints below
 * the target and of zones cold at minimum airflow, and of the fan while zones cool. The heaters' heat, air that is cooled
 * and reheated, and a fan at minimum airflow do not move a change point with the zone air: they stay as modelled. The
 * heaters' own energy stands in the meter's base load and bought heat on a meter of its own. Null where the model below
 * has nothing of it.
 */
export function meteredTier(
  input: AssessmentInput,
  plant: Plant,
  below: TierModel,
  meter: MeteredCooling,
): TierModel | null {
  const { zoneAir } = below;
  const parts = zoneAir ? metered(below, zoneAir) : [];
  if (!zoneAir || parts.length === 0) return null;
  const factor = step({
    symbol: "k",
    label: "metered electricity over the modelled, of what follows the zone air",
    unit: "",
    formula: "k = S / max(0.001, E_b)",
    terms: [
      meteredSaving(meter, zoneAir.rise, plant),
      sum({
        symbol: "E_b",
        label: "electricity that follows the zone air, as modelled from below",
        unit: "kWh a year",
        formula: "E_b = sum of the components",
        parts: parts.map(({ component, electric, share }) => ({
          symbol: electric.symbol,
          label: electric.label,
          quantity: partOf(component, electric, share),
        })),
      }),
    ],
    compute: (kwh, modelled) => kwh / Math.max(0.001, modelled),
    notes: ["The meter gives the total; the model gives only the shares of components and zones."],
  });
  const shares = new Map(parts.map(({ component, share }) => [component, share]));
  const components = below.components.map((each) => {
    const share = shares.get(each);
    return share ? scaled(each, factor, share, plant) : each;
  });
  return tierModel(3, components, input.currency);
}

function metered({ components }: TierModel, { fanWhileCooling }: ZoneAirRise): InTheMeter[] {
  return components.flatMap((component) => {
    const { id, electric } = component;
    const share = id === "setpoint" || id === "deadband" ? ALL : id === "fan" ? fanWhileCooling : null;
    return electric && share ? [{ component, electric, share }] : [];
  });
}

const ALL: Quantity = exact({
  symbol: "x",
  label: "share that follows the zone air",
  unit: "",
  value: 1,
  origin: "computed",
  source: "all of it",
});

const partOf = ({ id }: ComponentModel, electric: Quantity, share: Quantity): Quantity => {
  if (share === ALL) return electric;
  const symbol = `E_${NUMBERS[id]}c`;
  return step({
    symbol,
    label: `${electric.label}, while zones cool`,
    unit: electric.unit,
    formula: `${symbol} = ${share.symbol} * ${electric.symbol}`,
    terms: [share, electric],
    compute: (part, kwh) => part * kwh,
  });
};

const scaled = (component: ComponentModel, factor: Step, share: Quantity, plant: Plant): ComponentModel => {
  const symbol = `M_${NUMBERS[component.id]}`;
  return component.withElectricity((electric) => {
    const shared = { symbol, label: `${electric.label}, as metered`, unit: electric.unit };
    if (share === ALL) {
      return step({
        ...shared,
        formula: `${symbol} = k * ${electric.symbol}`,
        terms: [factor, electric],
        compute: (k, kwh) => k * kwh,
      });
    }
    return step({
      ...shared,
      formula: `${symbol} = ${electric.symbol} * (1 - ${share.symbol} + k * ${share.symbol})`,
      terms: [electric, share, factor],
      compute: (kwh, part, k) => kwh * (1 - part + k * part),
    });
  }, plant);
};
