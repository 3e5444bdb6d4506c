import type { PointKind } from "@/lib/trends/point-kind";
import type { DemoCalendar } from "./demo-calendar";
import type { OutdoorConditions } from "./outdoor-conditions";
import { recordStage } from "./record-stage";
import { type RecordedTrend, recordChanges, recordInterval } from "./record-trend";
import type { SimulatedZone } from "./simulate-plan";
import { SUBSTEP_SECONDS } from "./simulate-zone";

const SUFFIX = {
  "zone-air-temp": "ZN-T",
  "cooling-setpoint": "CLG-SP",
  "heating-setpoint": "HTG-SP",
  airflow: "SA-FLOW",
  "damper-position": "DMPR-POS",
  "reheat-valve": "RHT-VLV",
  "discharge-air-temp": "DA-T",
  "cooling-stage": "COMPRESSOR",
} as const satisfies Partial<Record<PointKind, string>>;

/** Damper position against share of design airflow, with duct pressure to spare. Common practice, no source. */
const damperPct = (airflowShare: number): number => 68 * airflowShare ** 0.3;

/** The trends of a zone as its controller records them, without those that were never set up. */
export function zoneTrends(zone: SimulatedZone, calendar: DemoCalendar): RecordedTrend[] {
  const { plan, run } = zone;
  const equipment = plan.unit === "packaged" ? "RTU" : "AHU-1.VAV";
  const point = <K extends keyof typeof SUFFIX>(kind: K) => ({
    zoneCode: plan.code,
    kind,
    externalName: `${equipment}-${plan.code}.${SUFFIX[kind]}`,
  });
  const at = (values: Float64Array) => (i: number) => values[i] as number;
  const trends = [
    recordInterval(point("zone-air-temp"), at(run.sensedAirTempC), calendar),
    recordChanges(point("cooling-setpoint"), run.coolingSetpointC, calendar),
    recordChanges(point("heating-setpoint"), run.heatingSetpointC, calendar),
  ];
  if (plan.unit === "packaged") {
    trends.push(recordStage(point("cooling-stage"), run.coolingOn, SUBSTEP_SECONDS, calendar));
    return trends;
  }
  trends.push(
    recordInterval(
      point("damper-position"),
      (i) => damperPct((run.airflowM3ps[i] as number) / plan.model.designAirflowM3ps),
      calendar,
    ),
    recordInterval(point("discharge-air-temp"), at(run.dischargeAirTempC), calendar),
  );
  if (plan.missingTrend !== "airflow") trends.push(recordInterval(point("airflow"), at(run.airflowM3ps), calendar));
  if (plan.missingTrend !== "reheat-valve")
    trends.push(recordInterval(point("reheat-valve"), (i) => 100 * (run.valveFraction[i] as number), calendar));
  return trends;
}

/** Air in the idle supply duct nears the air of the building. */
const IDLE_DUCT_C = 22.5;
const IDLE_DUCT_SHARE_PER_STEP = 0.12;

/** Outdoor and supply air of the building, and its electricity meter. */
export function buildingTrends(
  calendar: DemoCalendar,
  outdoor: OutdoorConditions,
  powerKw: Float64Array,
): RecordedTrend[] {
  let duct = IDLE_DUCT_C;
  const supply = outdoor.supplyAirTempC.map((running, i) => {
    duct = calendar.systemOn[i] === 1 ? running : duct + IDLE_DUCT_SHARE_PER_STEP * (IDLE_DUCT_C - duct);
    return duct;
  });
  return [
    recordInterval(
      { zoneCode: null, kind: "outdoor-air-temp", externalName: "SITE.OA-T" },
      (i) => outdoor.outdoorAirTempC[i] as number,
      calendar,
    ),
    recordInterval(
      { zoneCode: null, kind: "supply-air-temp", externalName: "AHU-1.SA-T" },
      (i) => supply[i] as number,
      calendar,
    ),
    recordInterval(
      { zoneCode: null, kind: "meter-power", externalName: "MAIN-METER.KW" },
      (i) => powerKw[i] as number,
      calendar,
    ),
  ];
}
