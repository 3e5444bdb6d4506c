import { describe, expect, it } from "vitest";
import { createBuilding } from "@/lib/services/buildings/save";
import { acceptProposals, setEntries, undoStep } from "@/lib/services/trend-imports/bulk-step";
import { confirmEntered, keepEntered, readStandingCautions } from "@/lib/services/trend-imports/enter-mapping";
import { readMappingTask } from "@/lib/services/trend-imports/mapping";
import { isSettled } from "@/lib/services/trend-imports/mapping-entry";
import { stageTrendFile } from "@/lib/services/trend-imports/stage";
import { addZone } from "@/lib/services/zones/save";
import { buildingInputOf } from "@/test/factories/building";
import { smallOffice } from "@/test/factories/office";
import { wideCsv } from "@/test/factories/trend-csv";
import { testContext } from "@/test/support/database";
import { refusalOf } from "@/test/support/refusal";

const BOX = {
  "VAV-2-14 ZN-T (°F)": [72, 71, 72],
  "VAV-2-14 CLG-SP (°F)": [74, 74, 74],
  "VAV-2-14 Temp (°F)": [60, 61, 60],
};

async function office(columns: Record<string, readonly number[]> = BOX) {
  const base = smallOffice();
  const { ctx, buildingId } = base;
  await stageTrendFile(ctx, buildingId, { name: "a.csv", bytes: wideCsv(columns) });
  const task = () => readMappingTask(ctx, buildingId);
  const standing = () => Object.fromEntries(task().lines.map(({ name, state }) => [name, state]));
  return { ...base, task, standing };
}

const LEFT_OUT = { what: "skip", zoneId: null, unit: null, continues: null } as const;

describe("what is entered on the mapping page", () => {
  it("is kept half done, and nothing of it is imported before it is confirmed", async () => {
    const { ctx, buildingId, zoneId, task, standing } = await office();
    const half = { what: "" as const, zoneId, unit: null };
    keepEntered(ctx, buildingId, { entries: { "VAV-2-14 Temp": half } });
    expect(standing()["VAV-2-14 Temp"]).toMatchObject({ origin: "entered", entry: half });
    expect(isSettled(standing()["VAV-2-14 Temp"] as never)).toBe(false);
    expect(task().waiting).toMatchObject([{ state: "waiting", answers: null }]);
    const unknown = { "VAV-2-14 Temp": { what: "moon phase" as never, zoneId, unit: null } };
    expect((await refusalOf(() => keepEntered(ctx, buildingId, { entries: unknown }))).code).toBe("invalid");
  });

  it("gives the siblings of a mapped point its zone", async () => {
    const { ctx, buildingId, zoneId, standing } = await office({
      "Box 7 ZN-T (°F)": [72, 71],
      "Box 7 CLG-SP (°F)": [74, 74],
    });
    expect(standing()["Box 7 CLG-SP"]?.entry.zoneId).toBeNull();
    keepEntered(ctx, buildingId, { entries: { "Box 7 ZN-T": { what: "zone-air-temp", zoneId, unit: null } } });
    expect(standing()["Box 7 CLG-SP"]).toMatchObject({ origin: "proposal", entry: { zoneId } });
  });

  it("does not confirm a proposal that nobody has looked at, and names every open point", async () => {
    const { ctx, buildingId } = await office();
    const error = await refusalOf(() => confirmEntered(ctx, buildingId, { cautionsSeen: "" }));
    expect(Object.keys(error.fieldErrors)).toEqual([
      "points.VAV-2-14 CLG-SP",
      "points.VAV-2-14 Temp",
      "points.VAV-2-14 ZN-T",
    ]);
  });

  it("confirms once all is settled, and asks again next time about what was left out for this time only", async () => {
    const { ctx, buildingId, standing } = await office();
    acceptProposals(ctx, buildingId);
    keepEntered(ctx, buildingId, { entries: { "VAV-2-14 Temp": { ...LEFT_OUT, what: "ask-again" } } });
    expect(confirmEntered(ctx, buildingId, { cautionsSeen: "" })).toHaveLength(1);
    await stageTrendFile(ctx, buildingId, {
      name: "b.csv",
      bytes: wideCsv({ ...BOX, "VAV-2-14 Temp (°F)": [62, 62, 62] }),
    });
    expect(standing()["VAV-2-14 Temp"]).toMatchObject({ origin: "open", entry: { what: "" } });
    expect(standing()["VAV-2-14 ZN-T"]?.origin).toBe("profile");
  });
});

describe("a change of many rows", () => {
  it("accepts whole proposals of high confidence only, and is taken back whole", async () => {
    const { ctx, buildingId, standing, task } = await office({ ...BOX, "VAV-9-99 ZN-T (°F)": [70, 70] });
    keepEntered(ctx, buildingId, { entries: { "VAV-2-14 ZN-T": LEFT_OUT } });
    expect(acceptProposals(ctx, buildingId)).toBe(1);
    expect(standing()["VAV-2-14 CLG-SP"]?.origin).toBe("entered");
    expect(standing()["VAV-9-99 ZN-T"]?.origin).toBe("proposal");
    expect(task().lastStep).toBe("1 row: proposals of high confidence accepted");
    expect(undoStep(ctx, buildingId)).toBe(1);
    expect(standing()["VAV-2-14 CLG-SP"]?.origin).toBe("proposal");
    expect(standing()["VAV-2-14 ZN-T"]?.entry).toEqual(LEFT_OUT);
    expect((await refusalOf(() => undoStep(ctx, buildingId))).code).toBe("precondition");
  });

  it("sets only what is said, only for the rows that are selected, and a unit only where it is asked", async () => {
    const { ctx, buildingId, otherZoneId, standing } = await office({ ...BOX, "VAV-2-15 Temp": [70, 70, 71] });
    const names = ["VAV-2-14 Temp", "VAV-2-15 Temp"];
    setEntries(ctx, buildingId, names, { what: "zone-air-temp", unit: "degC" }, "set");
    expect(standing()["VAV-2-14 Temp"]?.entry).toMatchObject({ what: "zone-air-temp", unit: null });
    expect(standing()["VAV-2-15 Temp"]?.entry).toMatchObject({ zoneId: otherZoneId, unit: "degC" });
    expect(standing()["VAV-2-14 ZN-T"]?.origin).toBe("proposal");
    expect((await refusalOf(() => setEntries(ctx, buildingId, [], { what: "skip" }, ""))).message).toContain(
      "select rows",
    );
    expect((await refusalOf(() => setEntries(ctx, buildingId, names, {}, ""))).message).toContain("Say what to set");
  });
});

describe("odd values at the confirmation", () => {
  it("are shown and let pass by their own mark only, and are not raised again by the next file", async () => {
    const { ctx, buildingId, task } = await office({
      "VAV-2-14 ZN-T (°F)": [72, 71, 72],
      "VAV-2-14 CLG-SP (°F)": [84, 84, 84],
    });
    acceptProposals(ctx, buildingId);
    const error = await refusalOf(() => confirmEntered(ctx, buildingId, { cautionsSeen: "another mark" }));
    // 84 °F is 28.9 °C, 72 °F is 22.2 °C: 6.7 K apart.
    expect(error.fieldErrors.cautions).toMatch(/CLG-SP is 6\.7 K from VAV-2-14 ZN-T, the air of zone 2-14/);
    const { mark, sentences } = readStandingCautions(ctx, buildingId, task());
    expect(sentences).toHaveLength(1);
    expect(confirmEntered(ctx, buildingId, { cautionsSeen: mark })).toHaveLength(1);
    const next = wideCsv({ "VAV-2-14 ZN-T (°F)": [72, 71, 71], "VAV-2-14 CLG-SP (°F)": [84, 84, 84] });
    expect((await stageTrendFile(ctx, buildingId, { name: "b.csv", bytes: next })).state).toBe("settled");
  });

  it.each([
    ["VAV-2-14 ZN-T (°F)", 40, /around 4\.4 °C; zone air is usually 10 to 40 °C/],
    ["VAV-2-14 ZN-T (°C)", 41, /around 41\.0 °C/],
    ["VAV-2-14 CLG-SP (°C)", 31, /setpoints are usually 15 to 30 °C/],
    ["VAV-2-14 HTG-SP (°F)", 50, /around 10\.0 °C; setpoints/],
  ])("say of %s around %d what is usual", async (name, value, sentence) => {
    const { ctx, buildingId, task } = await office({ [name]: [value, value, value] });
    acceptProposals(ctx, buildingId);
    expect(readStandingCautions(ctx, buildingId, task()).sentences.join()).toMatch(sentence);
  });

  it("say nothing at the limits themselves, or of a single odd reading", async () => {
    const columns = { "VAV-2-14 ZN-T (°C)": [25, 25, 0, 25, 25], "VAV-2-14 CLG-SP (°C)": [30, 30, 30, 30, 30] };
    const { ctx, buildingId, task } = await office({
      ...columns,
      "VAV-2-14 CLG-SP (°C)": [29.9, 29.9, 29.9, 29.9, 29.9],
    });
    acceptProposals(ctx, buildingId);
    expect(readStandingCautions(ctx, buildingId, task()).sentences).toEqual([]);
  });
});

describe("a file of eight thousand points", () => {
  it("is inspected, proposed for, accepted at once and confirmed", { timeout: 120_000 }, async () => {
    const ctx = testContext();
    const buildingId = createBuilding(ctx, buildingInputOf());
    for (let i = 0; i < 100; i++) addZone(ctx, buildingId, { code: `VAV-${1 + (i >> 5)}-${i & 31}` });
    const name = (i: number) => {
      const zone = Math.floor(i / 80);
      return `VAV-${1 + (zone >> 5)}-${zone & 31} ${["ZN-T", "CLG-SP"][i % 80] ?? `CO2 ${i % 80}`} (${i % 80 < 2 ? "°F" : "ppm"})`;
    };
    const columns = Object.fromEntries(
      Array.from({ length: 8000 }, (_, i) => [name(i), [i % 80 < 2 ? 72 : 600, 72.5, 73]]),
    );
    await stageTrendFile(ctx, buildingId, { name: "all.csv", bytes: wideCsv(columns) });
    const task = readMappingTask(ctx, buildingId);
    expect(task.lines).toHaveLength(8000);
    expect(acceptProposals(ctx, buildingId)).toBe(200);
    const rest = readMappingTask(ctx, buildingId).lines.filter(({ state }) => !isSettled(state));
    setEntries(
      ctx,
      buildingId,
      rest.map((line) => line.name),
      { what: "skip", zoneId: null },
      "leave out",
    );
    expect(confirmEntered(ctx, buildingId, { cautionsSeen: "" })).toHaveLength(1);
  });
});

it("tells points of the same name apart, so that each is mapped for itself", async () => {
  const { ctx, buildingId, task } = await office({ "VAV-2-14 ZN-T (°F)": [72, 71] });
  const twice = new TextEncoder().encode(
    "Timestamp,ZN-T (°F),ZN-T (°F)\n2026-07-06 08:00,72,70\n2026-07-06 08:15,71,70\n",
  );
  await stageTrendFile(ctx, buildingId, { name: "twice.csv", bytes: twice });
  const names = task().lines.map((line) => line.name);
  expect(new Set(names).size).toBe(names.length);
  expect(names.filter((each) => each.startsWith("ZN-T"))).toHaveLength(2);
});
