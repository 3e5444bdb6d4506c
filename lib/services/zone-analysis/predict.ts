import type { BuildingRow } from "@/db/queries/buildings";
import { findZone } from "@/db/queries/zones";
import { sourceText } from "@/lib/overcooling/assumption-inputs";
import { type MinimumAirflowPrediction, minimumAirflowPrediction } from "@/lib/trends/minimum-airflow-prediction";
import type { Origin } from "@/lib/working/working";
import { resolveAssumptions } from "../assumptions/resolve";
import type { Context } from "../context";
import type { ZoneAnalysis } from "./analyse-zone";

const ORIGIN: Record<NonNullable<ZoneAnalysis["minimumAirflowOrigin"]>, Origin> = {
  entered: "entered",
  "airflow-setpoint-trend": "measured",
  estimated: "computed",
};

/**
 * What a zone's air temperature would be at the airflow that it needs instead of its minimum, with the working. The airflow
 * needed is the same share of design as the cost takes. Null where the minimum or the design airflow is not known.
 */
export function predictAtRequiredAirflow(
  ctx: Context,
  building: BuildingRow,
  analysis: ZoneAnalysis,
): MinimumAirflowPrediction | null {
  const { minimumAirflowM3ps, designAirflowM3ps } = analysis.limits;
  const zone = findZone(ctx.db, building.id, analysis.zoneId);
  if (minimumAirflowM3ps === null || designAirflowM3ps === null || !zone) return null;
  const assumptions = resolveAssumptions(ctx, building.id);
  const assumed = (id: string) => {
    const found = assumptions.find((each) => each.id === id);
    if (!found) throw new Error(`the assumption "${id}" is not there`);
    return found;
  };
  const share = assumed("required-airflow-fraction");
  const supply = assumed("supply-air-temp");
  const zoneHref = `/zones/${zone.id}`;
  const required = share.value * designAirflowM3ps;
  return minimumAirflowPrediction({
    airAtMinimum: analysis.statistics.airAtMinimum,
    minimumAirflowM3ps: {
      value: minimumAirflowM3ps,
      origin: analysis.minimumAirflowOrigin ? ORIGIN[analysis.minimumAirflowOrigin] : "computed",
      source: analysis.minimumAirflowOrigin === "entered" ? "record of the zone" : "read off the zone's airflow trends",
      href: zoneHref,
    },
    requiredAirflowM3ps: {
      value: required,
      low: share.low * designAirflowM3ps,
      high: share.high * designAirflowM3ps,
      origin: "computed",
      working: {
        formula: "V_req = f_req · V_design",
        terms: [
          {
            symbol: "f_req",
            label: share.label,
            value: share.value,
            low: share.low,
            high: share.high,
            unit: share.unit,
            origin: share.origin,
            source: sourceText(share.source),
            assumptionId: share.id,
          },
          {
            symbol: "V_design",
            label: "design airflow",
            value: designAirflowM3ps,
            unit: "m³/s",
            origin: "entered",
            source: "record of the zone",
            href: zoneHref,
          },
        ],
        result: { symbol: "V_req", label: "airflow needed", value: required, unit: "m³/s" },
        notes: ["A bound for a proposal, never a setting."],
      },
    },
    assumedSupplyAirTempC: {
      value: supply.value,
      low: supply.low,
      high: supply.high,
      origin: supply.origin,
      source: sourceText(supply.source),
      assumptionId: supply.id,
    },
    targetZoneAirTempC: {
      value: building.targetZoneAirTempC,
      origin: "entered",
      source: "settings of the building",
      href: "/settings",
    },
    readingsHref: `${zoneHref}#history`,
  });
}
