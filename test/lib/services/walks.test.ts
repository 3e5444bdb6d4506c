import { randomUUID } from "node:crypto";
import { describe, expect, it } from "vitest";
import { listDevices } from "@/db/queries/devices";
import { listWalkEntries } from "@/db/queries/walks";
import type { Context } from "@/lib/services/context";
import type { WalkEntryInput } from "@/lib/services/walks/entry-input";
import { readWalk } from "@/lib/services/walks/read";
import { finishWalk, startWalk } from "@/lib/services/walks/start";
import { takeWalkEntries } from "@/lib/services/walks/take-entries";
import { smallOffice } from "@/test/factories/office";

function walking() {
  const office = smallOffice();
  const walkId = startWalk(office.ctx, office.buildingId);
  const entry = (changes: Partial<WalkEntryInput> = {}): WalkEntryInput => ({
    clientId: randomUUID(),
    walkId,
    deskCode: "2-14-01",
    kind: "nothing",
    madeAtMs: office.ctx.now,
    ...changes,
  });
  const device = (label: string) => ({
    label,
    deviceClass: "fan-heater-1500",
    meterKind: "plug-meter" as const,
    meterName: "Meter 3",
    readings: [
      { setting: "low-heat", value: 741 },
      { setting: "high-heat", value: 1443 },
    ],
  });
  const take = (...entries: unknown[]) => takeWalkEntries(office.ctx, office.buildingId, entries);
  return { ...office, walkId, entry, device, take };
}

const asOther = (ctx: Context): Context => ({
  ...ctx,
  actor: { kind: "user", id: "user-2", name: "Kim Stone", role: "facilities" },
});

describe("entries of a walk", () => {
  it("stores an entry once, however often it is sent", () => {
    const { ctx, buildingId, walkId, take, entry, device } = walking();
    const found = entry({ kind: "device", device: device("H-001") });
    expect(take(found)).toMatchObject([{ state: "stored" }]);
    expect(take(found, found)).toMatchObject([{ state: "repeat" }, { state: "repeat" }]);
    expect(listDevices(ctx.db, buildingId)).toHaveLength(1);
    expect(listWalkEntries(ctx.db, walkId)).toHaveLength(1);
  });

  it("puts what was read on the sheet and takes the usual of the class for the rest", () => {
    const { ctx, buildingId, take, entry, device } = walking();
    take(entry({ kind: "device", device: device("H-001") }));
    const [registered] = listDevices(ctx.db, buildingId);
    expect(registered).toMatchObject({ label: "H-001", kind: "space-heater", status: "found", hasThermostat: true });
    expect(registered?.settings.map(({ name, basis, powerW, meterName }) => [name, basis, powerW, meterName])).toEqual([
      ["off", "class-default", null, ""],
      ["fan-only", "class-default", null, ""],
      ["low-heat", "plug-meter", 741, "Meter 3"],
      ["high-heat", "plug-meter", 1443, "Meter 3"],
    ]);
  });

  it("refuses a label that is taken and stores nothing of the entry", () => {
    const { ctx, buildingId, walkId, take, entry, device } = walking();
    take(entry({ kind: "device", device: device("H-001") }));
    const [outcome] = take(entry({ deskCode: "2-15-01", kind: "device", device: device("H-001") }));
    expect(outcome).toMatchObject({ state: "refused", field: "label" });
    expect(listWalkEntries(ctx.db, walkId)).toHaveLength(1);
    expect(listDevices(ctx.db, buildingId)).toHaveLength(1);
  });

  it("shows what someone else entered of the desk instead of writing over it", () => {
    const { ctx, buildingId, take, entry, device, walkId } = walking();
    const theirs = entry({ kind: "device", device: device("H-001") });
    takeWalkEntries(asOther(ctx), buildingId, [theirs]);
    const mine = entry({ kind: "nothing" });
    const [outcome] = take(mine);
    expect(outcome).toMatchObject({ state: "conflict", unknown: [theirs.clientId] });
    expect(outcome?.message).toContain('"device H-001" was entered by Kim Stone');
    expect(listWalkEntries(ctx.db, walkId)).toHaveLength(1);
    expect(take({ ...mine, known: outcome?.unknown })).toMatchObject([{ state: "stored" }]);
  });

  it("takes it for no conflict when two people find nothing, or the same device still there", () => {
    const { ctx, buildingId, take, entry, device } = walking();
    takeWalkEntries(asOther(ctx), buildingId, [entry()]);
    expect(take(entry())).toMatchObject([{ state: "stored" }]);
    take(entry({ deskCode: "2-15-01", kind: "device", device: device("H-002"), known: [] }));
    const known = readWalk(ctx, buildingId).desks.find((desk) => desk.code === "2-15-01");
    const deviceId = known?.devices[0]?.id;
    const seen = {
      deskCode: "2-15-01",
      kind: "seen" as const,
      deviceId,
      known: known?.entries.map((each) => each.clientId),
    };
    takeWalkEntries(asOther(ctx), buildingId, [entry(seen)]);
    expect(take(entry(seen))).toMatchObject([{ state: "stored" }]);
    const [gone] = take(entry({ ...seen, kind: "missing" }));
    expect(gone).toMatchObject({ state: "conflict" });
    expect(readWalk(ctx, buildingId).missing).toEqual([]);
    take(entry({ ...seen, kind: "missing", known: [...(seen.known ?? []), ...(gone?.unknown ?? [])] }));
    expect(readWalk(ctx, buildingId).missing).toMatchObject([{ id: deviceId, label: "H-002", deskCode: "2-15-01" }]);
  });

  it("takes the good ones of a batch and says of each what became of it", () => {
    const { take, entry, device } = walking();
    const outcomes = take(
      entry(),
      { clientId: "no-uuid" },
      entry({ deskCode: "9-99" }),
      entry({ deskCode: "2-15-01", kind: "device", device: { ...device("H-9"), deviceClass: "toaster" } }),
      entry({ deskCode: "2-15-01", kind: "seen", deviceId: 99 }),
    );
    expect(outcomes.map(({ state }) => state)).toEqual(["stored", "refused", "refused", "refused", "refused"]);
    expect(outcomes[2]?.message).toContain("no desk 9-99");
  });

  it("reads the desks with what this walk knows of them, and begins anew with the next walk", () => {
    const { ctx, buildingId, walkId, take, entry } = walking();
    take(entry());
    expect(startWalk(ctx, buildingId)).toBe(walkId);
    expect(readWalk(ctx, buildingId).desks.map((desk) => [desk.code, desk.entries.length])).toEqual([
      ["2-14-01", 1],
      ["2-15-01", 0],
    ]);
    finishWalk(ctx, buildingId, walkId);
    expect(readWalk(ctx, buildingId).walk).toBeNull();
    startWalk(ctx, buildingId);
    expect(readWalk(ctx, buildingId).desks.every((desk) => desk.entries.length === 0)).toBe(true);
    expect(take(entry({ deskCode: "2-15-01" }))).toMatchObject([{ state: "stored" }]);
  });

  it("is closed to whoever is not signed in", () => {
    const { ctx, buildingId, entry } = walking();
    expect(() => takeWalkEntries({ ...ctx, actor: { kind: "anonymous" } }, buildingId, [entry()])).toThrow("Sign in");
  });
});
