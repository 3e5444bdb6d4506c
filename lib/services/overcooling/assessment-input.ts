import { type BuildingRow, findOccupiedHours } from "@/db/queries/buildings";
import { listDevices } from "@/db/queries/devices";
import { findWeatherYear } from "@/db/queries/weather";
import { listZones } from "@/db/queries/zones";
import type { DeviceSheet } from "@/lib/electrical/device-sheet";
import { occupiedWeatherYear } from "@/lib/energy-model/occupied-weather-year";
import type { AssessedDevice, AssessedZone, AssessmentInput } from "@/lib/overcooling/assessment-input";
import { proofsApart } from "@/lib/overcooling/proofs-apart";
import { median } from "@/lib/statistics/quantile";
import { localDateAt } from "@/lib/time/local-date";
import { annualise } from "@/lib/trends/annualise";
import { type AnnualBin, annualOccupiedBins } from "@/lib/trends/outdoor-bins";
import { resolveAssumptions } from "../assumptions/resolve";
import type { Context } from "../context";
import { sheetOf } from "../devices/read";
import { groupBy } from "../group-by";
import { meteredCooling } from "../meter/metered-cooling";
import { provenSavings } from "../proposals/proven-savings";
import { unpackDryBulbC } from "../weather/import";
import type { BuildingAnalysis } from "../zone-analysis/read";
import { coldReportsPerYear } from "./cold-reports";
import { tariffDetail, type WeatherCalendar } from "./tariff-detail";

/** Seed of every assessment: the same data give the same figures on any machine. */
const SEED = 20_260_101;
const DRAWS = 5000;

/** Everything that the assessment of a building rests on, gathered from the stores. */
export async function assessmentInput(
  ctx: Context,
  building: BuildingRow,
  analysis: BuildingAnalysis,
  seasonThresholdC: number,
): Promise<AssessmentInput> {
  const known = weatherOf(ctx, building, analysis);
  const weather = known?.year ?? null;
  const bins = seasonBins(weather, seasonThresholdC);
  return {
    currency: building.currency,
    floorAreaM2: building.floorAreaM2,
    targetZoneAirTempC: building.targetZoneAirTempC,
    ...presentCoolingSetpoint(building, analysis),
    systemType: building.systemType,
    hasEconomizer: building.hasEconomizer,
    heatingFuel: building.heatingFuel,
    electricity: {
      kind: building.electricityPriceKind,
      pricePerKwh: building.electricityPricePerKwh,
      demandPricePerKw: building.demandPricePerKw,
      demandMonths: building.demandMonths,
      ...tariffDetail(ctx, building, known, seasonThresholdC),
    },
    heatPricePerKwh: building.heatPricePerKwh,
    complaint:
      building.complaintHours === null || building.labourPricePerHour === null
        ? null
        : { hours: building.complaintHours, labourPricePerHour: building.labourPricePerHour },
    weather,
    assumptions: resolveAssumptions(ctx, building.id),
    zones: await zonesOf(ctx, building, analysis, { bins, seasonThresholdC }),
    meter: await meteredCooling(ctx, building, analysis),
    ...provenOf(ctx, building),
    seed: SEED,
    draws: DRAWS,
  };
}

function provenOf(ctx: Context, building: BuildingRow): Pick<AssessmentInput, "proofs" | "proofsOnSameDays"> {
  const { proofs, onSameDays } = proofsApart(provenSavings(ctx, building));
  return { proofs, proofsOnSameDays: onSameDays };
}

/** Occupied cooling-season hours of the weather year by outdoor bin; null without a weather year. */
export const seasonBins = (weather: AssessmentInput["weather"], seasonThresholdC: number): AnnualBin[] | null =>
  weather && annualOccupiedBins({ outdoorAirTempC: weather.dryBulbC, occupied: weather.occupied }, seasonThresholdC);

/** The weather year with the occupied part of each hour; its calendar is that of the record's end, else of today. */
export function weatherOf(
  ctx: Context,
  building: BuildingRow,
  { record }: Pick<BuildingAnalysis, "record">,
): { year: NonNullable<AssessmentInput["weather"]>; calendar: WeatherCalendar } | null {
  const row = findWeatherYear(ctx.db, building.id);
  if (!row) return null;
  const at = record ? (record.toUtcSeconds - 1) * 1000 : ctx.now;
  const calendar = {
    timeZone: building.timeZone,
    utcOffsetHours: row.utcOffsetHours,
    calendarYear: Number(localDateAt(at, building.timeZone).slice(0, 4)),
  };
  const { occupied } = occupiedWeatherYear({ hours: findOccupiedHours(ctx.db, building.id), ...calendar });
  return { year: { dryBulbC: unpackDryBulbC(row), occupied }, calendar };
}

/** Median of the zones' occupied cooling setpoints where they are trended, else what the building's people said. */
function presentCoolingSetpoint(
  building: BuildingRow,
  { zones }: BuildingAnalysis,
): Pick<AssessmentInput, "presentCoolingSetpointC" | "presentCoolingSetpointOrigin"> {
  const trended = zones.flatMap(({ statistics }) => statistics.coolingSetpoint?.occupiedMedianC ?? []);
  return trended.length > 0
    ? { presentCoolingSetpointC: median(trended), presentCoolingSetpointOrigin: "measured" }
    : { presentCoolingSetpointC: building.presentCoolingSetpointC, presentCoolingSetpointOrigin: "entered" };
}

async function zonesOf(
  ctx: Context,
  building: BuildingRow,
  analysis: BuildingAnalysis,
  season: { bins: readonly AnnualBin[] | null; seasonThresholdC: number },
): Promise<AssessedZone[]> {
  const analyses = new Map(analysis.zones.map((each) => [each.zoneId, each]));
  const devices = groupBy(
    listDevices(ctx.db, building.id).filter((device) => device.retiredOn === null),
    (device) => device.zoneId,
  );
  const reports = await coldReportsPerYear(ctx, building, analysis, season.seasonThresholdC);
  return listZones(ctx.db, building.id).map((zone) => {
    const known = analyses.get(zone.id);
    const annual = known && season.bins ? annualise(known.exposure, season.bins) : null;
    return {
      zoneId: zone.id,
      code: zone.code,
      floorAreaM2: zone.floorAreaM2,
      targetZoneAirTempC: zone.targetZoneAirTempC,
      designAirflowM3ps: zone.designAirflowM3ps,
      minimumAirflowM3ps: known ? known.limits.minimumAirflowM3ps : zone.minimumAirflowM3ps,
      minimumAirflowOrigin: minimumOrigin(known?.minimumAirflowOrigin, zone.minimumAirflowM3ps),
      annual: annual?.status === "ok" ? annual.annual : null,
      exposure: known?.exposure ?? null,
      devices: (devices.get(zone.id) ?? []).map((device) => assessedDevice(device, sheetOf(device, building))),
      coldReportsPerYear: reports.get(zone.id) ?? 0,
      fixInProgress: zone.fixInProgress !== "",
    };
  });
}

function minimumOrigin(
  origin: "entered" | "airflow-setpoint-trend" | "estimated" | null | undefined,
  entered: number | null,
): AssessedZone["minimumAirflowOrigin"] {
  if (origin === undefined) return entered === null ? null : "entered";
  return origin === "airflow-setpoint-trend" ? "measured" : origin;
}

function assessedDevice(
  { id, label, kind }: { id: number; label: string; kind: AssessedDevice["kind"] },
  sheet: DeviceSheet,
): AssessedDevice {
  const energyKwhPerYear = sheet.energy.status === "ok" ? sheet.energy.totalKwh : { value: 0, low: 0, high: 0 };
  const settingsWithoutPower =
    sheet.energy.status === "ok" ? sheet.energy.leftOut : sheet.lines.map((line) => line.name);
  return { deviceId: id, label, kind, energyKwhPerYear, highPowerW: sheet.highPowerW, settingsWithoutPower };
}
