import { moneyFromAmount } from "@/lib/money/money";
import { readBuilding } from "@/lib/services/buildings/find";
import { readCostOfOvercooling } from "@/lib/services/overcooling/assess";
import { costFindingSentences } from "@/lib/services/overcooling/finding-sentences";
import { withContext } from "../context";
import { readArguments, readBuildingId } from "../usage";

/** `building cost ID`: what overcooling costs the building a year. 1 when an input makes every figure meaningless. */
export async function buildingCost(args: string[]): Promise<number> {
  const { values, positionals } = readArguments(args, { json: { type: "boolean" } });
  const buildingId = readBuildingId(positionals[0]);
  return withContext(async (ctx) => {
    const building = readBuilding(ctx, buildingId);
    const { assessment, computedAtMs, record } = await readCostOfOvercooling(ctx, buildingId);
    const findings = costFindingSentences(assessment.findings);
    if (values.json) {
      const about = { id: building.id, name: building.name, currency: building.currency };
      const shown =
        assessment.status === "ok"
          ? {
              status: assessment.status,
              tier: assessment.tier,
              targetZoneAirTempC: building.targetZoneAirTempC,
              headline: assessment.headline,
              statedTotal: assessment.statedTotal,
              energy: assessment.energy,
              components: assessment.components.map(({ working: _, ...component }) => component),
              zones: assessment.zones,
              lowerTiers: assessment.lowerTiers,
            }
          : { status: assessment.status };
      process.stdout.write(`${JSON.stringify({ building: about, computedAtMs, record, ...shown, findings })}\n`);
    } else {
      const money = (amount: number) => `${Math.round(amount)} ${building.currency}`;
      const lines = [`${building.name}: cost of overcooling a year`];
      if (assessment.status === "ok") {
        const { p10, p50, p90 } = assessment.headline;
        const half = (value: number) => moneyFromAmount(value, building.currency).minorUnits;
        if (half(p10) > half(p90)) throw new Error("the range is upside down");
        lines.push(
          `  P10 ${money(p10)}, P50 ${money(p50)}, P90 ${money(p90)} against a target of ${building.targetZoneAirTempC} °C`,
          `  tier ${assessment.tier.number}: ${assessment.tier.label}`,
          "  by component (part of the P50):",
          ...assessment.components.map(({ label, contribution }) => `    ${label}: ${money(contribution)}`),
          "  by zone (part of the P50):",
          ...assessment.zones.map(({ code, contribution }) => `    ${code}: ${money(contribution)}`),
        );
      } else lines.push("  No figure: what follows has to be put right first.");
      lines.push(...findings.map(({ severity, what, action }) => `  ${severity}: ${what}${action ? ` ${action}` : ""}`));
      process.stdout.write(`${lines.join("\n")}\n`);
    }
    return assessment.status === "ok" ? 0 : 1;
  });
}
