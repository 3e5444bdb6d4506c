import type { LiveBuilding, SharedNumbers } from "../live-building";
import { SAVING_PARTS, type SavingPart } from "../live-picture";
import type { Energy, EnergySaved } from "./energy-saved";

/** Parts that last only as long as the change does; heaters given up have a share of their own. */
const LASTING: readonly SavingPart[] = ["setpoint", "deadband", "reheat", "fan"];

/** Share of a part's year that counts: changes are undone in time, on the average of the first year. */
export const keptShare = (part: SavingPart, shared: SharedNumbers): number =>
  LASTING.includes(part) ? shared.changeKeptFraction : 1;

export type Totals = { saving: number; electricKwh: number; heatKwh: number; emissionsKgCo2: number };

/** Sums of a variant's first year. With electric reheat heat counts as electricity. Money in major units. */
export function totalsOf(
  { isHeatElectric, heatPricePerKwh }: Pick<LiveBuilding, "isHeatElectric" | "heatPricePerKwh">,
  saved: EnergySaved,
  shared: SharedNumbers,
): Totals {
  let electricKwh = 0;
  let heatKwh = 0;
  for (const part of Object.keys(SAVING_PARTS) as SavingPart[]) {
    const kept = keptShare(part, shared);
    const energy = bought(saved.parts[part], isHeatElectric);
    electricKwh += kept * energy.electricKwh;
    heatKwh += kept * energy.heatKwh;
  }
  return {
    electricKwh,
    heatKwh,
    saving: electricKwh * shared.electricityPrice + heatKwh * (heatPricePerKwh ?? 0),
    emissionsKgCo2: electricKwh * shared.electricityEmissions + heatKwh * shared.heatEmissions,
  };
}

/** Electricity of a year while a variant stands the whole of it [kWh]. */
export const inForceKwh = ({ isHeatElectric }: Pick<LiveBuilding, "isHeatElectric">, saved: EnergySaved): number =>
  (Object.keys(SAVING_PARTS) as SavingPart[]).reduce(
    (sum, part) => sum + bought(saved.parts[part], isHeatElectric).electricKwh,
    0,
  );

export const bought = ({ electricKwh, heatKwh }: Energy, isHeatElectric: boolean): Energy =>
  isHeatElectric ? { electricKwh: electricKwh + heatKwh, heatKwh: 0 } : { electricKwh, heatKwh };
