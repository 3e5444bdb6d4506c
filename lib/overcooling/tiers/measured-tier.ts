import type { AssessmentInput } from "../assessment-input";
import { exact, type Quantity, type Step, step, sum } from "../calculation/quantity";
import {
  areaShare,
  type Cell,
  type ComponentEnergy,
  type ComponentModel,
  componentOfBuilding,
  componentOfCells,
  costOf,
  rowLabel,
  rowSymbol,
  type TierModel,
  tierModel,
} from "../component-model";
import type { Plant, PlantWeather } from "../plant";
import type { Row } from "../rows";
import { type HeatSplit, heatRemovalCell } from "./heater-cells";
import { type MeasuredFan, measuredFan } from "./measured-fan";
import { type MeasuredZone, measuredZone } from "./measured-zone";
import { outdoorAirFraction } from "./outdoor-air-fraction";
import { complaintCell, demandCells } from "./people-and-peak-cells";

const present = <T>(each: T | null): each is T => each !== null;

/**
 * Tier 2: degree-hours and hours by state of the zones with a record. A zone without one counts with its heaters and
 * reports only; nothing is carried over to it from others.
 */
export function measuredTier(
  input: AssessmentInput,
  plant: Plant & { weather: PlantWeather },
  rows: readonly Row[],
  heaters: readonly Cell[],
): TierModel {
  const { currency } = input;
  const zones = rows.flatMap((row) => (row.record ? [measuredZone(row, row.record, input.systemType, plant)] : []));
  const byRow = new Map(zones.map((each) => [each.row, each]));
  const fan = measuredFan(zones, plant);
  const exhausted = exhaustedShare(zones, fan, plant);
  const removal = heaters.map((each) =>
    heatRemovalCell(each, splitOf(byRow.get(each.row) ?? null, exhausted, plant), plant, currency),
  );
  const cells = (id: "setpoint" | "deadband" | "reheat", of: (zone: MeasuredZone) => ComponentEnergy | null) =>
    componentOfCells(
      id,
      zones.flatMap((zone): Cell[] => {
        const energy = of(zone);
        return energy ? [{ row: zone.row, ...energy, money: costOf(id, energy, plant, currency) }] : [];
      }),
      currency,
    );
  const demand = demandCells(rows, (row) => byRow.get(row) ?? null, plant, input);
  return tierModel(
    2,
    [
      componentOfCells("heater-energy", heaters, currency),
      componentOfCells("heat-removal", removal, currency),
      cells("setpoint", (zone) => ({ electric: zone.setpoint, heat: null })),
      cells("deadband", (zone) => (zone.deadband ? { electric: zone.deadband, heat: null } : null)),
      cells("reheat", (zone) => zone.reheat),
      fan ? fanComponent(fan, zones, plant, currency) : null,
      componentOfCells("demand", demand, currency),
      componentOfCells("complaints", rows.map((row) => complaintCell(row, input)).filter(present), currency),
    ],
    currency,
    { rise: buildingRise(zones), fanWhileCooling: fan?.whileCooling ?? null },
  );
}

/** By floor area; zones without a record are taken to rise by nothing, as they cost nothing. */
const buildingRise = (zones: readonly MeasuredZone[]): Quantity =>
  sum({
    symbol: "dT",
    label: "rise of the building's mean zone air at the target, over the season hours",
    unit: "K",
    formula: "dT = sum of the zones",
    parts: zones.map(({ row, rise }) => ({
      symbol: rowSymbol("dT", row),
      label: rowLabel(row),
      quantity: step({
        symbol: "dT_a",
        label: `part of the building's rise, ${rowLabel(row)}`,
        unit: "K",
        formula: "dT_a = a_z * dT_z",
        terms: [areaShare(row), rise],
        compute: (share, each) => share * each,
      }),
    })),
  });

function fanComponent(
  fan: MeasuredFan,
  zones: readonly MeasuredZone[],
  plant: Plant,
  currency: string,
): ComponentModel {
  const energy = { electric: fan.electric, heat: null };
  const shares = new Map<Row, Step>();
  for (const { row } of zones) {
    const share = fan.shareOf(row);
    if (share) shares.set(row, share);
  }
  return componentOfBuilding("fan", energy, plant, currency, [...shares.keys()], (row) => {
    const share = shares.get(row);
    if (!share) throw new Error("a row without a share of the fan was asked for one");
    return share;
  });
}

/** A zone's own split of hours; for a zone without a record the assumed one. */
function splitOf(zone: MeasuredZone | null, outdoorAir: Quantity, plant: Plant & { weather: PlantWeather }): HeatSplit {
  const shares = zone
    ? {
        cooling: zone.states.cooling.share,
        deadband: zone.hasOwnUnit ? nothingRemoved() : zone.states.deadband.share,
        reheat: zone.states.reheat.share,
      }
    : plant.stateShare;
  return {
    ...shares,
    outdoorAirFraction: outdoorAir,
    mechanicalFraction: plant.weather.mechanicalFraction,
    reheatMeasured: zone?.reheatMeasured ?? false,
  };
}

/** While a zone's own unit is idle nothing takes the heat of a heater away: it only warms the zone. */
const nothingRemoved = (): Quantity =>
  exact({
    symbol: "w_d",
    label: "share of the heat removed while the zone's own unit is idle",
    unit: "",
    value: 0,
    origin: "computed",
    source: "no cooling runs",
  });

function exhaustedShare(zones: readonly MeasuredZone[], fan: MeasuredFan | null, plant: Plant): Quantity {
  const served = fan ? zones.filter((each) => each.airflow !== null) : zones;
  const areaM2 = served.reduce((sum, each) => sum + each.row.floorAreaM2, 0);
  const area = exact({
    symbol: "A",
    label: "floor area of the measured zones",
    unit: "m²",
    value: areaM2,
    origin: "computed",
    source: "zone records",
  });
  if (fan) return outdoorAirFraction({ area, airflowFraction: fan.airflowFraction, design: fan.design }, plant);
  const design = step({
    symbol: "V_des",
    label: "design airflow of the measured zones",
    unit: "m³/s",
    formula: "V_des = v * A",
    terms: [plant.assumed.shared("design-airflow-per-area", "v"), area],
    compute: (perArea, each) => perArea * each,
  });
  const constant = exact({
    symbol: "r_0",
    label: "airflow of a constant fan, share of design",
    unit: "",
    value: 1,
    origin: "computed",
    source: "a fan of constant volume",
  });
  return outdoorAirFraction({ area, airflowFraction: constant, design }, plant);
}
