import { type BuildingRow, findOccupiedHours } from "@/db/queries/buildings";
import { listElectricityBills } from "@/db/queries/electricity-bills";
import { listBuildingPoints, type PointRow } from "@/db/queries/points";
import { findWeatherYear } from "@/db/queries/weather";
import type { MeterFinding } from "@/lib/energy-model/meter/meter-finding";
import { type MeterModel, modelOfBills, modelOfDays } from "@/lib/energy-model/meter/meter-model";
import { resolveAssumptions } from "../assumptions/resolve";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import { cached, fingerprintOf } from "../cached";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { type Kept, readKept } from "../kept/read-kept";
import type { ResultKind } from "../kept/result-kind";
import { type BuildingAnalysis, readBuildingAnalysis } from "../zone-analysis/read";
import { seasonThresholdC } from "../zones/overview";
import { type KelvinWorth, kelvinWorth } from "./kelvin-worth";
import { readMeterBills, readMeterDays } from "./meter-days";
import { type Meter, meterSubject, metersOf } from "./meters";
import { modelYear } from "./model-year";
import { setpointShares } from "./setpoint-shares";

/** One meter with its model and, where that may be used, what a kelvin of setpoint is worth by it. */
export type MeterResult = {
  /** Null when there is nothing to set energy against. */
  model: MeterModel | null;
  worth: KelvinWorth | null;
  findings: MeterFinding[];
};

export type EnergyMeter = {
  meters: { key: string; name: string }[];
  /** The meter that is shown, with its result; null when the building has none. */
  shown: ({ key: string; name: string } & MeterResult) | null;
};

/** The result of one meter, whose key is the part; null when the building has no such meter. */
export const METER: ResultKind<MeterResult | null> = {
  name: "energy-meter",
  version: 2,
  inputs: ["trends", "mapping", "zones", "building", "assumptions", "weather", "bills"],
  async workOut(ctx, building, key) {
    const meter = metersOf(ctx, building.id).find((each) => each.key === key);
    return meter ? meterResult(ctx, building, meter) : null;
  },
};

/** A building's meters, and the last result of one: that of `key`, else the first. `kept` is null without any meter. */
export async function readShownMeter(
  ctx: Context,
  buildingId: number,
  key?: string,
): Promise<{
  energyMeter: EnergyMeter;
  meter: EnergyMeter["meters"][number] | null;
  kept: Kept<MeterResult | null> | null;
}> {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const meters = metersOf(ctx, buildingId).map(({ key, name }) => ({ key, name }));
  const meter = key === undefined ? meters[0] : meters.find((each) => each.key === key);
  if (key !== undefined && !meter) throw new ServiceError("not-found", "This meter does not exist in the building.");
  if (!meter) return { energyMeter: { meters, shown: null }, meter: null, kept: null };
  const kept = await readKept(ctx, buildingId, METER, meter.key);
  const shown = kept.result && { ...meter, ...kept.result };
  return { energyMeter: { meters, shown }, meter, kept };
}

/** The same for one who waits: worked out here where it has to be. */
export async function readEnergyMeter(ctx: Context, buildingId: number, key?: string): Promise<EnergyMeter> {
  requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const meters = metersOf(ctx, buildingId);
  const meter = key === undefined ? meters[0] : meters.find((each) => each.key === key);
  if (key !== undefined && !meter) throw new ServiceError("not-found", "This meter does not exist in the building.");
  const names = meters.map(({ key, name }) => ({ key, name }));
  if (!meter) return { meters: names, shown: null };
  return { meters: names, shown: { key: meter.key, name: meter.name, ...(await meterResult(ctx, building, meter)) } };
}

/** The result of a meter. `known` is the building's analysis, for one who has it already. */
export async function meterResult(
  ctx: Context,
  building: BuildingRow,
  meter: Meter,
  known?: BuildingAnalysis,
): Promise<MeterResult> {
  const outdoor = listBuildingPoints(ctx.db, building.id).find((point) => point.kind === "outdoor-air-temp");
  if (!outdoor)
    return {
      model: null,
      worth: null,
      findings: [{ code: "outdoor-missing", severity: "disqualifies", evidence: {} }],
    };
  const analysis = known ?? (await readBuildingAnalysis(ctx, building, seasonThresholdC(ctx, building.id)));
  const assumptions = resolveAssumptions(ctx, building.id);
  const shares = setpointShares(ctx, building, analysis, assumptions);
  const ids = meter.source === "point" ? [meter.point.id, outdoor.id] : [outdoor.id];
  const fingerprint = fingerprintOf({
    version: 3,
    meter,
    outdoor: [outdoor.id, outdoor.sampling],
    revisions: await ctx.trends.rev(ids),
    bills: meter.source === "bills" ? listElectricityBills(ctx.db, building.id) : [],
    occupied: findOccupiedHours(ctx.db, building.id),
    timeZone: building.timeZone,
    weather: findWeatherYear(ctx.db, building.id)?.sha256 ?? null,
    price: [building.electricityPriceKind, building.electricityPricePerKwh, building.currency],
    shares,
    blended: assumptions.find((each) => each.id === "blended-price-energy-share"),
  });
  const about = { buildingId: building.id, subject: meterSubject(meter), fingerprint };
  const work = async (): Promise<MeterResult> => {
    const model = await modelOf(ctx, building, meter, outdoor);
    if (model.status !== "ok") return { model, worth: null, findings: model.findings };
    const year = modelYear(ctx, building, model);
    const { worth, findings } = kelvinWorth(building, meter, model, { year, shares, assumptions });
    return { model, worth, findings: [...model.findings, ...findings] };
  };
  return (await cached(ctx, about, work)).result;
}

async function modelOf(ctx: Context, building: BuildingRow, meter: Meter, outdoor: PointRow): Promise<MeterModel> {
  return meter.source === "bills"
    ? modelOfBills(await readMeterBills(ctx, building, outdoor))
    : modelOfDays(await readMeterDays(ctx, building, meter, outdoor));
}
