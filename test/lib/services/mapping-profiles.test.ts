import { describe, expect, it } from "vitest";
import { findImportRun } from "@/db/queries/import-runs";
import { listPoints } from "@/db/queries/points";
import { createBuilding } from "@/lib/services/buildings/save";
import type { Context } from "@/lib/services/context";
import {
  listProfiles,
  readRunProfileSentences,
  renameProfile,
  retireProfile,
} from "@/lib/services/mapping-profiles/manage";
import { confirmEntered, keepEntered } from "@/lib/services/trend-imports/enter-mapping";
import { importTrendFile } from "@/lib/services/trend-imports/import-file";
import { readMappingTask } from "@/lib/services/trend-imports/mapping";
import { queueTrendImports } from "@/lib/services/trend-imports/queue";
import { settleRun } from "@/lib/services/trend-imports/settle-run";
import { stageTrendFile } from "@/lib/services/trend-imports/stage";
import { workInline } from "@/lib/services/trend-imports/work";
import { addZone } from "@/lib/services/zones/save";
import { buildingInputOf } from "@/test/factories/building";
import { monthlyCsv, ROOM } from "@/test/factories/monthly-file";
import { smallOffice } from "@/test/factories/office";
import { bytesOf } from "@/test/factories/trend-csv";
import { testContext } from "@/test/support/database";
import { refusalOf } from "@/test/support/refusal";

const UNATTENDED = { acceptProposals: false, answers: {} };

/** Confirms what waits as proposed, with the units and the date order given, as a person would on the page. */
async function confirmAll(ctx: Context, buildingId: number, profileName: string): Promise<number[]> {
  const task = readMappingTask(ctx, buildingId);
  keepEntered(ctx, buildingId, {
    entries: Object.fromEntries(task.lines.map(({ name, state }) => [name, { ...state.entry, unit: "degF" }])),
    answersByRun: Object.fromEntries(task.waiting.map((run) => [String(run.id), { dateOrder: "mdy" as const }])),
    profileNames: Object.fromEntries(task.sources.map(({ key }) => [key, profileName])),
  });
  const runIds = confirmEntered(ctx, buildingId, { cautionsSeen: "" });
  queueTrendImports(ctx, buildingId, runIds);
  for (const id of runIds) await settleRun(ctx, id, workInline(ctx));
  return runIds;
}

async function monthOne(ctx = smallOffice(), name = "quarter hours") {
  const { ctx: context, buildingId } = ctx;
  await stageTrendFile(context, buildingId, { name: "trend-2026-06.csv", bytes: monthlyCsv(6, ROOM) });
  await confirmAll(context, buildingId, name);
  const bring = (fileName: string, bytes: Uint8Array) =>
    importTrendFile(context, buildingId, { name: fileName, bytes }, UNATTENDED);
  return { ...ctx, bring };
}

describe("a profile made on month one", () => {
  it("imports month two with no question, date order and units included, and the run says which version did it", async () => {
    const { ctx, buildingId, zoneId, bring } = await monthOne();
    const report = await bring("trend-2026-07.csv", monthlyCsv(7, ROOM));
    expect(report).toMatchObject({ outcome: "imported", samples: { added: 12 }, open: [], ask: [] });
    expect(report.mapped.map(({ kind, zone }) => [kind, zone])).toEqual([
      ["cooling-setpoint", "2-14"],
      ["zone-air-temp", "2-14"],
    ]);
    expect(readRunProfileSentences(ctx, report.runId)).toEqual([
      'Settled without a question: Profile "quarter hours", version 1, answered every question.',
    ]);
    // 5 July, not 7 May: 08:00 in Chicago is 13:00 UTC.
    const [air] = listPoints(ctx.db, buildingId).filter((point) => point.zoneId === zoneId);
    const stamps: number[] = [];
    for await (const { ts } of ctx.trends.read([air?.id ?? 0], Date.UTC(2026, 6, 1) / 1000, 4e9)) stamps.push(...ts);
    expect(stamps[0]).toBe(Date.UTC(2026, 6, 5, 13) / 1000);
  });

  it("asks nothing of a file brought in by a person either, and leaves none waiting", async () => {
    const { ctx, buildingId } = await monthOne();
    const staged = await stageTrendFile(ctx, buildingId, { name: "trend-2026-07.csv", bytes: monthlyCsv(7, ROOM) });
    expect(staged.state).toBe("settled");
    expect(readMappingTask(ctx, buildingId).waiting).toEqual([]);
    expect(findImportRun(ctx.db, buildingId, staged.run.id)).toMatchObject({ state: "done", samplesAdded: 12 });
  });

  it("notices a changed heading: nothing is stored, and what is new and what is gone are named", async () => {
    const { ctx, buildingId, zoneId, bring } = await monthOne();
    const { "VAV-2-14 ZN-T": air, ...rest } = ROOM;
    const report = await bring("trend-2026-07.csv", monthlyCsv(7, { "VAV-2-14 SpaceTemp": air, ...rest }));
    expect(report).toMatchObject({ outcome: "asked", samples: null });
    expect(report.open.map(({ name }) => name)).toEqual(["VAV-2-14 SpaceTemp", "VAV-2-14 ZN-T"]);
    const task = readMappingTask(ctx, buildingId);
    expect(task.profileNotes[0]?.sentence).toBe(
      'Profile "quarter hours", version 1, was applied, but does not fit any more (1 new, 1 missing). VAV-2-14 SpaceTemp is new. VAV-2-14 ZN-T is gone.',
    );
    const byName = new Map(task.lines.map((line) => [line.name, line]));
    expect(byName.get("VAV-2-14 CLG-SP")?.state).toMatchObject({
      origin: "profile",
      entry: { what: "cooling-setpoint" },
    });
    expect(byName.get("VAV-2-14 SpaceTemp")).toMatchObject({
      state: { origin: "proposal", entry: { what: "zone-air-temp", zoneId } },
      continues: "VAV-2-14 ZN-T",
    });
    expect(task.fileAsks[0]).toMatchObject({ given: { dateOrder: "mdy" }, byProfile: true });
  });

  it("goes on with a renamed point's series when a person says that it is the same, in a second version", async () => {
    const { ctx, buildingId, bring } = await monthOne();
    const before = listPoints(ctx.db, buildingId).find((point) => point.kind === "zone-air-temp");
    const { "VAV-2-14 ZN-T": air, ...rest } = ROOM;
    const renamed = { "VAV-2-14 SpaceTemp": air, ...rest };
    await bring("trend-2026-07.csv", monthlyCsv(7, renamed));
    const [line] = readMappingTask(ctx, buildingId).lines.filter(({ continues }) => continues);
    if (!line) throw new Error("no line offers its former name");
    const entry = { ...line.state.entry, unit: "degF", continues: null };
    keepEntered(ctx, buildingId, { entries: { [line.name]: entry } });
    const taken = await refusalOf(() => confirmEntered(ctx, buildingId, { cautionsSeen: "" }));
    expect(taken.fieldErrors[`points.${line.name}`]).toContain("VAV-2-14 ZN-T is already");
    keepEntered(ctx, buildingId, { entries: { [line.name]: { ...entry, continues: line.continues } } });
    const [runId = 0] = confirmEntered(ctx, buildingId, { cautionsSeen: "" });
    queueTrendImports(ctx, buildingId, [runId]);
    await settleRun(ctx, runId, workInline(ctx));
    const after = listPoints(ctx.db, buildingId).find((point) => point.kind === "zone-air-temp");
    expect(after).toMatchObject({ id: before?.id, externalName: "VAV-2-14 SpaceTemp" });
    expect(listProfiles(ctx, buildingId).profiles[0]).toMatchObject({ name: "quarter hours", version: 2 });
    expect((await bring("trend-2026-08.csv", monthlyCsv(8, renamed))).outcome).toBe("imported");
  });

  it.each([
    ["a point that is gone", { "VAV-2-14 ZN-T": ROOM["VAV-2-14 ZN-T"] }, {}, /CLG-SP is gone/],
    ["a point that is new", { ...ROOM, "VAV-2-15 ZN-T": [70, 70, 70, 70, 70, 70] }, {}, /proposed: zone air temp/],
    [
      "a unit in the heading",
      { "VAV-2-14 ZN-T (°C)": [22, 22, 22, 22, 22, 22], "VAV-2-14 CLG-SP": ROOM["VAV-2-14 CLG-SP"] },
      {},
      /ZN-T is written in °C, before without a unit/,
    ],
    ["another delimiter", ROOM, { delimiter: ";" }, /split by semicolons, before commas/],
    [
      "another way of writing dates",
      ROOM,
      { written: () => "2026-07-05" },
      /dates are written year first, before month first/,
    ],
  ])("is not applied unseen to %s", async (_, columns, written, sentence) => {
    const { bring } = await monthOne();
    const report = await bring("trend-2026-07.csv", monthlyCsv(7, columns, written));
    expect(report).toMatchObject({ outcome: "asked", samples: null });
    expect(report.open.map(({ reason }) => reason).join(" ")).toMatch(sentence);
  });

  it("does not answer a date order that the file itself contradicts", async () => {
    const { bring } = await monthOne();
    const report = await bring("july.csv", monthlyCsv(7, ROOM, { written: () => "25/07/2026" }));
    expect(report.outcome).toBe("asked");
    expect(report.open.map(({ reason }) => reason)).toContain("Its dates are written day first, before month first.");
  });

  it("stops when the values say that kind or unit are no longer right", async () => {
    const { bring } = await monthOne();
    const celsius = { "VAV-2-14 ZN-T": [22, 22, 22, 22, 22, 22], "VAV-2-14 CLG-SP": [24, 24, 24, 24, 24, 24] };
    const report = await bring("trend-2026-07.csv", monthlyCsv(7, celsius));
    expect(report.outcome).toBe("asked");
    expect(report.open.map(({ reason }) => reason).join(" ")).toMatch(/lies around -5\.6 °C/);
  });
});

describe("which profile", () => {
  it("is never one of another building", async () => {
    const { ctx } = await monthOne();
    const other = createBuilding(ctx, buildingInputOf({ name: "Second house" }));
    addZone(ctx, other, { code: "2-14" });
    const report = await importTrendFile(ctx, other, { name: "t.csv", bytes: monthlyCsv(7, ROOM) }, UNATTENDED);
    expect(report.outcome).toBe("asked");
    expect(readMappingTask(ctx, other).profileNotes).toEqual([]);
  });

  it("is never a retired one, and a retired name is free again", async () => {
    const { ctx, buildingId, bring } = await monthOne();
    const [profile] = listProfiles(ctx, buildingId).profiles;
    retireProfile(ctx, buildingId, profile?.id ?? 0);
    expect((await bring("trend-2026-07.csv", monthlyCsv(7, ROOM))).outcome).toBe("asked");
    expect(readMappingTask(ctx, buildingId).profileNotes).toEqual([]);
    expect((await refusalOf(() => renameProfile(ctx, buildingId, profile?.id ?? 0, "x"))).code).toBe("conflict");
    await confirmAll(ctx, buildingId, "quarter hours");
    const all = listProfiles(ctx, buildingId).profiles;
    expect(all.map(({ name, version, retiredBy }) => [name, version, retiredBy])).toEqual([
      ["quarter hours", 1, null],
      ["quarter hours", 1, "Robin Vale"],
    ]);
  });

  it("is the newest of two that fit, and the other one is named", async () => {
    const base = await monthOne();
    const { ctx, buildingId, bring } = base;
    const [first] = listProfiles(ctx, buildingId).profiles;
    retireProfile(ctx, buildingId, first?.id ?? 0);
    await stageTrendFile(ctx, buildingId, { name: "b.csv", bytes: monthlyCsv(7, ROOM) });
    await confirmAll(ctx, buildingId, "older");
    const [older] = listProfiles(ctx, buildingId).profiles;
    // A second profile of the same source comes about when the first is out of use for a while.
    ctx.db.$client.prepare("update mapping_profile set retired_at_ms = 1 where id = ?").run(older?.id);
    await stageTrendFile(ctx, buildingId, { name: "c.csv", bytes: monthlyCsv(8, ROOM) });
    await confirmAll(ctx, buildingId, "newer");
    ctx.db.$client.prepare("update mapping_profile set retired_at_ms = null where id = ?").run(older?.id);
    const report = await bring("d.csv", monthlyCsv(9, ROOM));
    expect(readRunProfileSentences(ctx, report.runId)[0]).toContain(
      'Profile "newer", version 1, answered every question. It is the newest of those that fit; so does "older".',
    );
  });

  it("is none when fewer than half of the points are known to it", async () => {
    const { ctx, buildingId, bring } = await monthOne();
    await bring("other.csv", monthlyCsv(7, { "VAV-9 ZN-T": [70, 71], "VAV-8 ZN-T": [70, 71] }));
    expect(readMappingTask(ctx, buildingId).profileNotes).toEqual([]);
  });
});

describe("keeping profiles", () => {
  it("makes a new version under a name in use, and none when nothing differs", async () => {
    const { ctx, buildingId } = await monthOne();
    const more = { ...ROOM, "VAV-2-15 ZN-T": [70, 70, 70, 70, 70, 70] };
    await stageTrendFile(ctx, buildingId, { name: "trend-2026-07.csv", bytes: monthlyCsv(7, more) });
    expect(readMappingTask(ctx, buildingId).sources[0]?.name).toBe("quarter hours");
    await confirmAll(ctx, buildingId, "quarter hours");
    const [profile] = listProfiles(ctx, buildingId).profiles;
    expect(profile).toMatchObject({ version: 2, fileName: "trend-2026-07.csv" });
    expect(Object.keys(profile?.content.points ?? {})).toHaveLength(3);
    expect(profile?.earlier.map(({ version }) => version)).toEqual([1]);
  });

  it("keeps none when its name is left blank", async () => {
    const { ctx, buildingId } = await monthOne(smallOffice(), " ");
    expect(listProfiles(ctx, buildingId).profiles).toEqual([]);
  });

  it("takes files of one point each together, and settles the next ones whichever of them come", async () => {
    const { ctx, buildingId } = smallOffice();
    const file = (value: number, day: number) =>
      bytesOf([
        "Timestamp,Value (°F)",
        ...[0, 15, 30, 45].map((m) => `2026-07-${10 + day} 08:${m || "00"},${value + m / 60}`),
      ]);
    for (const [name, value] of [
      ["2-14 ZN-T.csv", 72],
      ["2-15 ZN-T.csv", 70],
    ] as const)
      await stageTrendFile(ctx, buildingId, { name, bytes: file(value, 1) });
    expect(readMappingTask(ctx, buildingId).sources).toHaveLength(1);
    await confirmAll(ctx, buildingId, "singles");
    const rule = UNATTENDED;
    const next = await importTrendFile(ctx, buildingId, { name: "2-15 ZN-T.csv", bytes: file(70, 2) }, rule);
    expect(next).toMatchObject({ outcome: "imported", open: [] });
    const foreign = await importTrendFile(ctx, buildingId, { name: "2-16 ZN-T.csv", bytes: file(70, 2) }, rule);
    expect(foreign.outcome).toBe("asked");
  });

  it("refuses a name that is in use, too long or blank", async () => {
    const { ctx, buildingId } = await monthOne();
    await stageTrendFile(ctx, buildingId, { name: "x.csv", bytes: monthlyCsv(7, { "VAV-2-15 ZN-T": [70, 71, 70] }) });
    await confirmAll(ctx, buildingId, "second");
    const ids = new Map(listProfiles(ctx, buildingId).profiles.map(({ name, id }) => [name, id]));
    const rename = (name: string) => refusalOf(() => renameProfile(ctx, buildingId, ids.get("second") ?? 0, name));
    expect((await rename("quarter hours")).message).toContain('Another profile is called "quarter hours"');
    expect((await rename(" ")).code).toBe("invalid");
    expect((await rename("x".repeat(121))).code).toBe("invalid");
    renameProfile(ctx, buildingId, ids.get("second") ?? 0, " south wing ");
    expect(
      listProfiles(ctx, buildingId)
        .profiles.map(({ name }) => name)
        .sort(),
    ).toEqual(["quarter hours", "south wing"]);
  });

  it("is for facilities people only", async () => {
    const { ctx, buildingId } = await monthOne();
    const anonymous = testContext({ ...ctx, actor: { kind: "anonymous" } });
    for (const use of [
      () => listProfiles(anonymous, buildingId),
      () => retireProfile(anonymous, buildingId, 1),
      () => renameProfile(anonymous, buildingId, 1, "x"),
      () => confirmEntered(anonymous, buildingId, { cautionsSeen: "" }),
    ])
      expect((await refusalOf(use)).code).toBe("unauthenticated");
  });
});
