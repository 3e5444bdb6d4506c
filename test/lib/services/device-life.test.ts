import { describe, expect, it } from "vitest";
import { listDeviceEvents } from "@/db/queries/devices";
import { noteControl } from "@/lib/services/devices/controls";
import { moveDevice } from "@/lib/services/devices/life";
import { readDevice } from "@/lib/services/devices/read";
import { readDeviceRecord } from "@/lib/services/devices/record";
import { registerDevice } from "@/lib/services/devices/register";
import { readRemovals } from "@/lib/services/devices/removals";
import { correctItem, type InspectionInput, recordInspection } from "@/lib/services/inspections/record";
import { heaterInput, smallOffice } from "@/test/factories/office";
import { refusalOf } from "@/test/support/refusal";

function officeWithHeater() {
  const office = smallOffice();
  const id = registerDevice(office.ctx, office.buildingId, heaterInput({ ownerContact: "ext. 4711" }));
  const move = (status: Parameters<typeof moveDevice>[3]["status"], onDate = "2025-06-25", note = "") =>
    moveDevice(office.ctx, office.buildingId, id, { status, onDate, note });
  return { ...office, id, move };
}

const inspectionInput = (items: InspectionInput["items"], changes: Partial<InspectionInput> = {}): InspectionInput => ({
  checklist: "us-ifc-2018",
  inspectedOn: "2025-06-24",
  nextDueOn: null,
  items,
  ...changes,
});

describe("the life of a device", () => {
  it("is kept step by step, with who and when", () => {
    const { ctx, id, move, buildingId } = officeWithHeater();
    move("under-review", "2025-06-21");
    move("approved-to-remain", "2025-06-22", "until the zone is put right");
    expect(
      listDeviceEvents(ctx.db, id).map(({ status, onDate, enteredBy, note }) => [status, onDate, enteredBy, note]),
    ).toEqual([
      ["found", "2025-06-20", "Robin Vale", ""],
      ["under-review", "2025-06-21", "Robin Vale", ""],
      ["approved-to-remain", "2025-06-22", "Robin Vale", "until the zone is put right"],
    ]);
    expect(readDevice(ctx, buildingId, id)).toMatchObject({ status: "approved-to-remain", retiredOn: null });
  });

  it("drops the contact of its owner when it is removed, and counts it no longer until it returns", () => {
    const { ctx, buildingId, id, move } = officeWithHeater();
    move("removed");
    expect(readDevice(ctx, buildingId, id)).toMatchObject({
      retiredOn: "2025-06-25",
      ownerContact: "",
      status: "removed",
    });
    move("returned", "2025-06-28");
    expect(readDevice(ctx, buildingId, id)).toMatchObject({ retiredOn: null, ownerContact: "", status: "returned" });
  });

  it("refuses steps that do not follow, days before it was found, and words that are no day", async () => {
    const { move } = officeWithHeater();
    expect((await refusalOf(() => move("returned"))).fieldErrors.status).toBeDefined();
    expect((await refusalOf(() => move("removed", "2025-01-01"))).fieldErrors.onDate).toContain("2025-06-20");
    expect((await refusalOf(() => move("removed", "soon"))).fieldErrors.onDate).toContain("YYYY-MM-DD");
  });
});

describe("an inspection", () => {
  it("takes an approval back, keeps it from being given while something is open, and names when it is due", async () => {
    const { ctx, buildingId, id, move } = officeWithHeater();
    move("approved-to-remain", "2025-06-22");
    const items = {
      damaged: { outcome: "fail" as const, note: "tape on the cord" },
      clearance: { outcome: "fail" as const },
      recall: { outcome: "pass" as const },
    };
    recordInspection(ctx, buildingId, id, inspectionInput(items));
    const record = readDeviceRecord(ctx, buildingId, id);
    expect(readDevice(ctx, buildingId, id).status).toBe("under-review");
    expect(record.condition).toBe("out-of-use");
    expect(record.open.map(({ itemId, severity, dueOn }) => [itemId, severity, dueOn])).toEqual([
      ["damaged", "take-out-of-use", "2025-06-24"],
      ["clearance", "correct-before-use", "2025-07-08"],
    ]);
    expect(record.inspections[0]).toMatchObject({ nextDueOn: "2026-06-24", enteredBy: "Robin Vale" });
    const refused = await refusalOf(() => move("approved-to-remain", "2025-06-26"));
    expect(refused.message).toBe(
      "2 items of its inspection must be put right first: an approval waives no safety item.",
    );

    const [cord, clearance] = record.open;
    correctItem(ctx, buildingId, id, cord?.id ?? 0, { correctedOn: "2025-06-27", correctionNote: "new cord" });
    expect(readDeviceRecord(ctx, buildingId, id).condition).toBe("correct-first");
    correctItem(ctx, buildingId, id, clearance?.id ?? 0, { correctedOn: "2025-06-27" });
    expect(readDeviceRecord(ctx, buildingId, id).condition).toBe("in-order");
    move("approved-to-remain", "2025-06-28");
  });

  it("closes what a later one finds in order, and leaves open what a later one did not look at", () => {
    const { ctx, buildingId, id } = officeWithHeater();
    recordInspection(
      ctx,
      buildingId,
      id,
      inspectionInput({ damaged: { outcome: "fail" }, clearance: { outcome: "fail" } }),
    );
    const later = inspectionInput({ damaged: { outcome: "pass" } }, { inspectedOn: "2025-06-29" });
    recordInspection(ctx, buildingId, id, later);
    expect(readDeviceRecord(ctx, buildingId, id).open.map(({ itemId }) => itemId)).toEqual(["clearance"]);
  });

  it("leaves a house's own policy and what can wait without effect on the status", () => {
    const { ctx, buildingId, id, move } = officeWithHeater();
    move("approved-to-remain", "2025-06-22");
    recordInspection(ctx, buildingId, id, inspectionInput({ "glowing-or-large": { outcome: "fail" } }));
    expect(readDevice(ctx, buildingId, id).status).toBe("approved-to-remain");
    expect(readDeviceRecord(ctx, buildingId, id).condition).toBe("open-items");
  });

  it("refuses one in which nothing was looked at, or that lies before the device was found", async () => {
    const { ctx, buildingId, id } = officeWithHeater();
    const none = inspectionInput({ damaged: { outcome: "not-seen" } });
    expect((await refusalOf(() => recordInspection(ctx, buildingId, id, none))).message).toContain(
      "Nothing was looked at",
    );
    const early = inspectionInput({ damaged: { outcome: "pass" } }, { inspectedOn: "2024-01-01" });
    expect((await refusalOf(() => recordInspection(ctx, buildingId, id, early))).fieldErrors.inspectedOn).toBeDefined();
  });
});

it("notes of a control what its readings say: a dial that changes nothing, and refuses one that was not measured", async () => {
  const { ctx, buildingId, id } = officeWithHeater();
  noteControl(ctx, buildingId, id, { name: "speed dial", lowEndW: 33.4, highEndW: 33.5, changesSpeed: false });
  noteControl(ctx, buildingId, id, { name: "second dial", lowEndW: 33.4, highEndW: 33.5, changesSpeed: true });
  noteControl(ctx, buildingId, id, { name: "switch", lowEndW: 750, highEndW: 1480 });
  expect(readDeviceRecord(ctx, buildingId, id).controls.map(({ name, effect }) => [name, effect])).toEqual([
    ["speed dial", "nothing"],
    ["second dial", "speed-only"],
    ["switch", "power"],
  ]);
  const unread = await refusalOf(() => noteControl(ctx, buildingId, id, { name: "dial", lowEndW: null, highEndW: 3 }));
  expect(unread.fieldErrors.lowEndW).toContain("it is not measured");
});

it("counts by zone what was removed, came back and was found after a removal", () => {
  const { ctx, buildingId, id, move } = officeWithHeater();
  const second = registerDevice(ctx, buildingId, heaterInput({ label: "H-2" }));
  move("removed", "2025-06-25");
  registerDevice(ctx, buildingId, heaterInput({ label: "H-3", foundOn: "2025-07-01" }));
  move("returned", "2025-07-02");
  moveDevice(ctx, buildingId, second, { status: "removed", onDate: "2025-07-03" });
  const { zones, building } = readRemovals(ctx, buildingId, "space-heater");
  expect(zones.map(({ zoneCode }) => zoneCode)).toEqual(["2-14"]);
  // By hand: found 2, then 1 of 2 out, then 1 of 3, none of 3, 1 of 3; two ever removed, one back and one new.
  expect(zones[0]?.points.map(({ onDate, removalFraction }) => [onDate, removalFraction])).toEqual([
    ["2025-06-20", 0],
    ["2025-06-25", 1 / 2],
    ["2025-07-01", 1 / 3],
    ["2025-07-02", 0],
    ["2025-07-03", 1 / 3],
  ]);
  expect(building.at(-1)).toMatchObject({ everRemoved: 2, returned: 1, foundAfterRemoval: 1, reboundFraction: 1 });
  expect(building[0]?.reboundFraction).toBeNull();
  expect(id).toBeGreaterThan(0);
});
