import { type DevicePlan, devicePlans } from "@/db/seed/device-plan";
import { normal, streamOf } from "@/db/seed/normal";
import { DEMO_CAUSES, type DemoCause, type PlantedCause } from "@/db/seed/planted-causes";
import { seedDemoBuilding } from "@/db/seed/seed";
import { type ZonePlan, zonePlan } from "@/db/seed/zone-plan";
import { readZonesOverview } from "@/lib/services/zones/overview";
import type { ZoneDiagnosis } from "@/lib/trends/diagnosis/diagnose-zone";
import { testContext } from "./database";

export type MadeBuilding = { planted: PlantedCause[]; plans: ZonePlan[]; devices: DevicePlan[] };

/** Causes whose finding needs a trend, and that trend. */
const LEAVE_OUT: readonly (readonly [DemoCause, "airflow" | "reheat-valve"])[] = [
  ["setpoint-too-low", "airflow"],
  ["minimum-airflow-too-high", "airflow"],
  ["reheat-fighting", "reheat-valve"],
];

/**
 * A building of 36 zones like the demo's, with causes, their strength and all random numbers drawn anew by `name`: a third
 * healthy, the rest any other cause, and three zones without the trend that would tell. The weather is the demo's.
 */
export function madeBuilding(name: string): MadeBuilding {
  const random = streamOf(`made/${name}`);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const codes = ["1", "2", "3"].flatMap((floor) =>
    Array.from({ length: 12 }, (_, k) => `${name}${floor}-${String(k + 1).padStart(2, "0")}`),
  );
  const others = DEMO_CAUSES.filter((cause) => cause !== "healthy");
  const planted: PlantedCause[] = codes.map((zoneCode) => ({
    zoneCode,
    cause: random() < 1 / 3 ? "healthy" : (others[Math.floor(random() * others.length)] ?? "healthy"),
  }));
  for (const [cause, missingTrend] of LEAVE_OUT) {
    const zone = planted.find((each) => each.cause === cause && !each.missingTrend);
    if (zone) zone.missingTrend = missingTrend;
  }
  const plans = planted.map((each) =>
    zonePlan(each, {
      variationF: between(-0.5, 1.5),
      minimumFactor: between(0.92, 1.1),
      sensorBiasK: between(1.5, 2.3),
      override: { from: random() < 0.5 ? "2026-03-23" : "2026-05-25", dropK: between(1.6, 2.4) },
      undersized: between(0.23, 0.3),
      coldDesk: { desk: Math.floor(between(0, 5)), offsetK: -3 + 0.3 * normal(random) },
      heaterAtSensorK: between(1.8, 2.8),
    }),
  );
  return { planted, plans, devices: devicePlans(plans, `${name}-`) };
}

/** What is said of each zone of the demo building, or of a made one, after a whole year in databases of its own. */
export async function diagnosesOf(made?: MadeBuilding): Promise<Map<string, ZoneDiagnosis>> {
  const ctx = testContext();
  const { buildingId } = await seedDemoBuilding({ db: ctx.db, trends: ctx.trends, made });
  const { zones } = await readZonesOverview(ctx, buildingId);
  return new Map(zones.flatMap(({ zone, diagnosis }) => (diagnosis ? [[zone.code, diagnosis] as const] : [])));
}
