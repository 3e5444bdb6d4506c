import { expect, it } from "vitest";
import { openAppDatabase } from "@/db/client";
import { device } from "@/db/schema/device";
import { plugLog } from "@/db/schema/plug-log";
import { demoSpan } from "@/db/seed/demo-calendar";
import { seedDemoBuilding } from "@/db/seed/seed";
import { openTrendStore } from "@/db/trends/store";
import { readPlugLogView } from "@/lib/services/plug-logs/read";
import { testContext } from "@/test/support/database";

it("leaves a reviewed plug log on a fan heater, whose settings are those of its sheet and whose season can be worked out", async () => {
  const db = openAppDatabase(":memory:");
  const trends = openTrendStore(":memory:");
  const scope = { span: demoSpan("2026-07-06", "2026-07-08"), zoneCodes: ["1-09", "2-12", "1-06"] };
  const { buildingId } = await seedDemoBuilding({ db, trends, scope });
  const [row] = db.select().from(plugLog).all();
  if (!row)
    throw new Error(`no log; classes ${JSON.stringify(db.select({ c: device.deviceClass }).from(device).all())}`);
  const { log } = readPlugLogView(testContext({ db, trends }), buildingId, row.deviceId, row.id);
  expect(log.figures.states.map((state) => state.setting?.name)).toEqual(["off", "fan-only", "low-heat", "high-heat"]);
  expect(log.figures.states.at(-1)?.dutyFraction).toBeGreaterThan(0.6);
  expect(log.figures.longestFullRun?.hours).toBeGreaterThan(3);
  expect(log.season).toMatchObject({ status: "ok", strata: [{ name: "occupied days" }, { name: "other days" }] });
  expect(log.rawDeletedAtMs).not.toBeNull();
});
