import { findComfortReport } from "@/db/queries/comfort";
import { findZone, listDesks } from "@/db/queries/zones";
import { besideRange, type FeltRange, feltRange } from "@/lib/comfort/felt-range";
import { type DraughtRange, draughtRange, type FanEffect, fanEffects } from "@/lib/comfort/moving-air";
import { type ControlThen, controlThen } from "@/lib/comfort-reports/control-then";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { seasonThresholdC } from "../zones/overview";
import { airAtReports } from "./air-at-reports";
import { type FeltInput, feltBasis } from "./felt-inputs";
import type { ComfortReportView } from "./list";
import { type ConditionKind, type ReadingThen, readingsThen } from "./readings-then";

/** What a standard's method says of the moment, and where the vote lies beside it. */
export type FeltThen = {
  range: FeltRange;
  beside: ReturnType<typeof besideRange> | null;
  inputs: FeltInput[];
  /** What a desk fan would have been worth. */
  fan: FanEffect[];
  /** Share who feel a draught at the air speed that was measured; null where none was. */
  draught: DraughtRange | null;
};

/** A report with what the zone was like when it was made. Trends that come in later fill in later. */
export type ReportConditions = {
  report: ComfortReportView;
  readings: ReadingThen[];
  control: ControlThen;
  /** Null where no zone air is recorded for the moment. */
  felt: FeltThen | null;
};

/** `measured`: what somebody measured at the desk; asked about, not kept. */
export async function readReportConditions(
  ctx: Context,
  buildingId: number,
  reportId: number,
  measured: { airSpeedMps: number | null } = { airSpeedMps: null },
): Promise<ReportConditions> {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const report = findComfortReport(ctx.db, buildingId, reportId);
  const zone = report && findZone(ctx.db, buildingId, report.zoneId);
  if (!report || !zone) throw new ServiceError("not-found", "This comfort report does not exist.");
  const desk = listDesks(ctx.db, buildingId).find(({ id }) => id === report.deskId);
  const readings = await readingsThen(ctx, buildingId, zone.id, Math.floor(report.reportedAtMs / 1000));
  const meanOf = (kind: ConditionKind): number | null => {
    const reading = readings.find((each) => each.kind === kind);
    return reading ? (reading.hourMean ?? reading.value) : null;
  };
  const nowOf = (kind: ConditionKind): number | null => readings.find((each) => each.kind === kind)?.value ?? null;
  const zoneAirTempC = meanOf("zone-air-temp");
  // Zone air is asked for again here so that a report is judged by the same season on its page, in the diagnosis and in the cost.
  const [air] = await airAtReports(ctx, buildingId, [report], seasonThresholdC(ctx, buildingId));
  return {
    report: { ...report, zoneCode: zone.code, deskCode: desk?.code ?? null },
    readings,
    control: controlThen({
      zoneAirTempC,
      coolingSetpointC: nowOf("cooling-setpoint"),
      heatingSetpointC: nowOf("heating-setpoint"),
    }),
    felt:
      zoneAirTempC === null
        ? null
        : feltThen(report, {
            airTempC: zoneAirTempC,
            relHumidityPct: meanOf("relative-humidity"),
            inCoolingSeason: air?.inCoolingSeason ?? true,
            airSpeedMps: measured.airSpeedMps,
          }),
  };
}

function feltThen(
  { thermalSensation, clothing, activity }: Pick<ComfortReportView, "thermalSensation" | "clothing" | "activity">,
  air: { airTempC: number; relHumidityPct: number | null; inCoolingSeason: boolean; airSpeedMps: number | null },
): FeltThen {
  const { inputs, listed } = feltBasis({ ...air, clothing, activity });
  const range = feltRange(inputs);
  const { airTempC, airSpeedMps } = air;
  return {
    range,
    beside: range.status === "ok" ? besideRange(thermalSensation, range.pmv) : null,
    inputs: listed,
    fan: fanEffects(inputs),
    draught: airSpeedMps === null ? null : draughtRange({ airTempC, airSpeedMps }),
  };
}
