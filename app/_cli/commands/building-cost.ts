import { allocateRounded } from "@/lib/money/allocate";
import { formatMoney } from "@/lib/money/format";
import { moneyFromAmount } from "@/lib/money/money";
import { type Building, readBuilding } from "@/lib/services/buildings/find";
import { type CostOfOvercooling, readCostOfOvercooling } from "@/lib/services/overcooling/assess";
import { costFindingSentences } from "@/lib/services/overcooling/finding-sentences";
import { formatTemperature } from "@/lib/units/format";
import { withContext } from "../context";
import { readArguments, readBuildingId } from "../usage";

type Assessed = Extract<CostOfOvercooling["assessment"], { status: "ok" }>;

/** `building cost ID`: what overcooling costs the building a year. 1 when an input makes every figure meaningless. */
export async function buildingCost(args: string[]): Promise<number> {
  const { values, positionals } = readArguments(args, { json: { type: "boolean" } });
  const buildingId = readBuildingId(positionals[0]);
  return withContext(async (ctx) => {
    const building = readBuilding(ctx, buildingId);
    const cost = await readCostOfOvercooling(ctx, buildingId);
    const printed = values.json ? JSON.stringify(asObject(building, cost)) : asLines(building, cost).join("\n");
    process.stdout.write(`${printed}\n`);
    return cost.assessment.status === "ok" ? 0 : 1;
  });
}

/** Exact figures; the workings stand on the building's page. */
function asObject({ id, name, currency, targetZoneAirTempC }: Building, cost: CostOfOvercooling): object {
  const { assessment, computedAtMs, record } = cost;
  const about = { building: { id, name, currency, targetZoneAirTempC }, computedAtMs, record };
  const findings = costFindingSentences(assessment.findings);
  if (assessment.status !== "ok") return { ...about, status: assessment.status, findings };
  const components = assessment.components.map(({ working: _, ...component }) => component);
  return { ...about, ...assessment, components, findings };
}

function asLines(building: Building, { assessment }: CostOfOvercooling): string[] {
  return [
    `${building.name}: cost of overcooling a year`,
    ...(assessment.status === "ok" ? figureLines(building, assessment) : ["  No figure before this is put right:"]),
    ...costFindingSentences(assessment.findings).map(
      ({ severity, what, action }) => `  ${severity}: ${what}${action ? ` ${action}` : ""}`,
    ),
  ];
}

/** Whole amounts; components and zones add up to the printed P50. */
function figureLines({ currency, temperatureUnit, targetZoneAirTempC }: Building, assessed: Assessed): string[] {
  const { headline, tier, components, zones } = assessed;
  const money = (amount: number): string => formatMoney(moneyFromAmount(amount, currency), { whole: true });
  const parts = (each: readonly { contribution: number }[]): number[] =>
    allocateRounded(
      each.map(({ contribution }) => contribution),
      headline.p50,
    );
  const [componentParts, zoneParts] = [parts(components), parts(zones)];
  return [
    `  P10 ${money(headline.p10)}  P50 ${money(headline.p50)}  P90 ${money(headline.p90)}  against ${formatTemperature(targetZoneAirTempC, temperatureUnit).text}`,
    `  tier ${tier.number}: ${tier.label}`,
    "  components of the P50",
    ...components.map(({ label }, i) => `    ${label}: ${money(componentParts[i] ?? 0)}`),
    "  zones of the P50",
    ...zones.map(({ code }, i) => `    ${code}: ${money(zoneParts[i] ?? 0)}`),
  ];
}
