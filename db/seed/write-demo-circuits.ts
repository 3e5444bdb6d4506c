import { and, eq, isNull } from "drizzle-orm";
import type { AppTransaction } from "../client";
import { branchCircuit } from "../schema/branch-circuit";
import { device } from "../schema/device";
import { deviceEvent, inspection, inspectionItem } from "../schema/device-life";
import { DEMO_AUTHOR } from "./demo-building";
import { startOfLocalDate } from "./demo-calendar";

/** Day of the walk on which outlets were traced and heaters looked at. */
const WALKED_ON = "2026-01-20";
const WALKED_AT_MS = 1000 * (startOfLocalDate(WALKED_ON) + 20 * 3600);

/** Circuits of the demo by the zone whose heaters hang on them: one for each way in which a circuit can stand. */
const CIRCUITS = [
  { zoneCode: "1-09", panel: "LP-1", circuit: "9", breakerRatingA: 20, base: 3, mapping: "circuit-tracer" },
  { zoneCode: "1-06", panel: "LP-1", circuit: "14", breakerRatingA: 20, base: null, mapping: "panel-schedule" },
  { zoneCode: "2-02", panel: "LP-2", circuit: "3", breakerRatingA: 15, base: 0, mapping: "assumed" },
  { zoneCode: "2-12", panel: "LP-2", circuit: "21", breakerRatingA: 20, base: 6, mapping: "circuit-tracer" },
] as const;

const INSPECTED = [
  ["damaged", "take-out-of-use"],
  ["hot-outlet", "take-out-of-use"],
  ["clearance", "correct-before-use"],
  ["tip-over", "correct-before-use"],
  ["cord-route", "correct-before-use"],
] as const;

/** Writes the circuits whose zones are there, hangs their heaters on them, and keeps what the walk saw of the first of each. */
export function writeDemoCircuits(tx: AppTransaction, buildingId: number, zoneIds: ReadonlyMap<string, number>): void {
  for (const { zoneCode, base, mapping, ...named } of CIRCUITS) {
    const zoneId = zoneIds.get(zoneCode);
    if (zoneId === undefined) continue;
    const { id: circuitId } = tx
      .insert(branchCircuit)
      .values({
        ...named,
        buildingId,
        voltageV: 120,
        receptacleRatingA: 15,
        ruleSet: "nec-2023",
        baseContinuousA: base,
        baseNonContinuousA: base === null ? null : 0,
        baseLoadNote: base === null ? "" : "screens and chargers, counted",
        createdAtMs: WALKED_AT_MS,
        updatedAtMs: WALKED_AT_MS,
      })
      .returning({ id: branchCircuit.id })
      .get();
    const heaters = tx
      .update(device)
      .set({ circuitId, circuitMapping: mapping, outletKind: "duplex" })
      .where(and(eq(device.zoneId, zoneId), eq(device.kind, "space-heater"), isNull(device.retiredOn)))
      .returning({ id: device.id })
      .all();
    const [first] = heaters.sort((a, b) => a.id - b.id);
    if (first) writeInspection(tx, first.id, mapping === "assumed");
  }
}

function writeInspection(tx: AppTransaction, deviceId: number, onExtensionLead: boolean): void {
  const entered = { enteredBy: DEMO_AUTHOR, enteredAtMs: WALKED_AT_MS };
  const { id: inspectionId } = tx
    .insert(inspection)
    .values({ deviceId, inspectedOn: WALKED_ON, checklist: "us-ifc-2018", nextDueOn: "2027-01-20", ...entered })
    .returning({ id: inspection.id })
    .get();
  for (const [itemId, severity] of INSPECTED)
    tx.insert(inspectionItem).values({ inspectionId, itemId, severity, outcome: "pass" }).run();
  if (!onExtensionLead) return;
  tx.insert(inspectionItem)
    .values({
      inspectionId,
      itemId: "extension-lead",
      severity: "correct-before-use",
      outcome: "fail",
      note: "reel under the desk",
      dueOn: "2026-02-03",
    })
    .run();
  tx.insert(deviceEvent)
    .values({
      deviceId,
      status: "under-review",
      onDate: WALKED_ON,
      note: "Inspection: 1 item to put right.",
      ...entered,
    })
    .run();
  tx.update(device).set({ status: "under-review" }).where(eq(device.id, deviceId)).run();
}
