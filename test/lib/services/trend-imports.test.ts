import { describe, expect, it } from "vitest";
import { updateImportRun } from "@/db/queries/import-runs";
import { listPoints } from "@/db/queries/points";
import { createBuilding } from "@/lib/services/buildings/save";
import type { Context } from "@/lib/services/context";
import { readImportHistory, readImportRun } from "@/lib/services/imports/history";
import { confirmMapping } from "@/lib/services/trend-imports/confirm";
import { readMappingTask } from "@/lib/services/trend-imports/mapping";
import { runTrendImport, runTrendImports } from "@/lib/services/trend-imports/run";
import type { PointChoice } from "@/lib/services/trend-imports/run-input";
import { stageTrendFile } from "@/lib/services/trend-imports/stage";
import { addZone } from "@/lib/services/zones/save";
import { buildingInputOf } from "@/test/factories/building";
import { bytesOf, stampOf, wideCsv } from "@/test/factories/trend-csv";
import { testContext } from "@/test/support/database";
import { refusalOf } from "@/test/support/refusal";

function office() {
  const ctx = testContext();
  const buildingId = createBuilding(ctx, buildingInputOf());
  const zoneId = addZone(ctx, buildingId, { code: "2-14" });
  const at = (
    kind: Extract<PointChoice, { skip: false }>["kind"],
    unit: string | null = null,
    place = zoneId,
  ): PointChoice => ({ skip: false, kind, zoneId: place, unit });
  return { ctx, buildingId, zoneId, at };
}

const AIR = "VAV-2-14 ZN-T (°F)";
const TEMPS = [72.1, 71.9, 71.5, 71.2];

/** Every sample of a building as [point, UTC seconds, value]. */
async function samplesOf(ctx: Context, buildingId: number): Promise<[string, number, number][]> {
  const points = listPoints(ctx.db, buildingId);
  const found: [string, number, number][] = [];
  for await (const { series, ts, v, decimals } of ctx.trends.read(
    points.map((point) => point.id),
    0,
    4e9,
  )) {
    const name = points.find((point) => point.id === series)?.externalName ?? "";
    ts.forEach((seconds, i) => {
      found.push([name, seconds, (v[i] as number) / 10 ** decimals]);
    });
  }
  return found;
}

async function importMapped(
  ctx: Context,
  buildingId: number,
  file: { name: string; bytes: Uint8Array },
  points: Record<string, PointChoice>,
) {
  const { state, run } = await stageTrendFile(ctx, buildingId, file);
  if (state !== "waiting") return { state, run };
  await runTrendImports(ctx, buildingId, confirmMapping(ctx, buildingId, { points }));
  return { state, run: readImportRun(ctx, buildingId, run.id).run };
}

describe("taking a trend file in", () => {
  it("stages the same bytes once, whatever the file is called", async () => {
    const { ctx, buildingId } = office();
    const bytes = wideCsv({ [AIR]: TEMPS });
    const first = await stageTrendFile(ctx, buildingId, { name: "a.csv", bytes });
    const second = await stageTrendFile(ctx, buildingId, { name: "b.csv", bytes });
    expect([first.state, second.state]).toEqual(["waiting", "waiting"]);
    expect(second.run.id).toBe(first.run.id);
    const [, both] = await Promise.all([
      stageTrendFile(ctx, buildingId, { name: "c.csv", bytes: wideCsv({ [AIR]: [70, 71] }) }),
      stageTrendFile(ctx, buildingId, { name: "d.csv", bytes: wideCsv({ [AIR]: [70, 71] }) }),
    ]);
    expect(both.state).toBe("waiting");
    const history = readImportHistory(ctx, buildingId);
    expect(history.map((run) => run.state).sort()).toEqual(["cancelled", "waiting", "waiting"]);
    const twin = history.find((run) => run.state === "cancelled");
    expect(twin?.message).toMatch(/^The same file as [cd]\.csv, import \d+: taken in once\.$/);
  });

  it("takes two files of the same bytes for two when their points are named by the files", async () => {
    const { ctx, buildingId, at } = office();
    const bytes = bytesOf(["Timestamp,Value (%)", `${stampOf(0)},0`, `${stampOf(1)},0`, `${stampOf(2)},0`]);
    const other = addZone(ctx, buildingId, { code: "2-15" });
    for (const [name, zoneId] of [
      ["2-14 HTG-O", at("reheat-valve")],
      ["2-15 HTG-O", at("reheat-valve", null, other)],
    ] as const) {
      const { state } = await importMapped(ctx, buildingId, { name: `${name}.csv`, bytes }, { [name]: zoneId });
      expect(state).toBe("waiting");
    }
    expect(await samplesOf(ctx, buildingId)).toHaveLength(6);
    const again = await stageTrendFile(ctx, buildingId, { name: "2-14 HTG-O.csv", bytes });
    expect(again.state).toBe("unchanged");
  });

  it("keeps no point, sample or upload of a refused file, and says why", async () => {
    const { ctx, buildingId } = office();
    const bytes = new TextEncoder().encode("Minutes of the safety meeting\n\nPresent: everyone.\n");
    const { state, run } = await stageTrendFile(ctx, buildingId, { name: "minutes.txt", bytes });
    expect(state).toBe("refused");
    expect(run.message).toMatch(/not a trend export/);
    expect(ctx.uploads.read(run.sha256)).toBeNull();
    expect(listPoints(ctx.db, buildingId)).toEqual([]);
    expect(readMappingTask(ctx, buildingId).waiting).toEqual([]);
  });
});

describe("settling what the points are", () => {
  it("reports every open point by name and keeps nothing until all are settled", async () => {
    const { ctx, buildingId, at } = office();
    const bytes = wideCsv({ [AIR]: TEMPS, "VAV-2-14 Flow (cfm)": [300, 310, 305, 300], "Misc 7": [1, 2, 3, 4] });
    const { run } = await stageTrendFile(ctx, buildingId, { name: "a.csv", bytes });
    const [air, flow] = readMappingTask(ctx, buildingId)
      .lines.map((line) => line.name)
      .filter((name) => name.startsWith("VAV"))
      .sort((a, b) => Number(a.includes("Flow")) - Number(b.includes("Flow"))) as [string, string];
    const error = await refusalOf(() =>
      confirmMapping(ctx, buildingId, {
        points: { [air]: { skip: false, kind: "zone-air-temp", zoneId: 999 }, [flow]: at("zone-air-temp") },
      }),
    );
    expect(error.fieldErrors[`points.${air}`]).toMatch(/zone does not exist/);
    expect(error.fieldErrors[`points.${flow}`]).toMatch(/needs a temperature/);
    expect(error.fieldErrors["points.Misc 7"]).toMatch(/say what it is/);
    expect(readImportRun(ctx, buildingId, run.id).run.answers).toBeNull();
    const refused = await refusalOf(() => runTrendImport(ctx, buildingId, run.id));
    expect(refused.code).toBe("precondition");
  });

  it("refuses two points for one quantity of a zone, in one file and against an earlier one", async () => {
    const { ctx, buildingId, at } = office();
    const bytes = wideCsv({ [AIR]: TEMPS, "VAV-2-14 ZN-T2 (°F)": TEMPS });
    await stageTrendFile(ctx, buildingId, { name: "a.csv", bytes });
    const names = readMappingTask(ctx, buildingId).lines.map((line) => line.name);
    const twice = Object.fromEntries(names.map((name) => [name, at("zone-air-temp")]));
    const error = await refusalOf(() => confirmMapping(ctx, buildingId, { points: twice }));
    expect(Object.values(error.fieldErrors).join()).toMatch(/already the zone air temp of that zone/);

    const [first, second] = names as [string, string];
    const points = { [first]: at("zone-air-temp"), [second]: { skip: true as const } };
    await runTrendImports(ctx, buildingId, confirmMapping(ctx, buildingId, { points }));
    await stageTrendFile(ctx, buildingId, { name: "b.csv", bytes: wideCsv({ "Room 2-14 temp (°F)": TEMPS }) });
    const [line] = readMappingTask(ctx, buildingId).lines;
    const later = await refusalOf(() =>
      confirmMapping(ctx, buildingId, { points: { [line?.name ?? ""]: at("zone-air-temp") } }),
    );
    expect(later.message + Object.values(later.fieldErrors).join()).toContain(`${first} is already`);
  });

  it("asks for a unit that the file does not say, and stores by the answer", async () => {
    const { ctx, buildingId, at } = office();
    await stageTrendFile(ctx, buildingId, { name: "a.csv", bytes: wideCsv({ "VAV-2-14 ZN-T": TEMPS }) });
    const [line] = readMappingTask(ctx, buildingId).lines;
    expect(line?.unitAsk).toMatchObject({ choices: ["degF", "degC", "other"], proposal: "degF" });
    const name = line?.name ?? "";
    const error = await refusalOf(() => confirmMapping(ctx, buildingId, { points: { [name]: at("zone-air-temp") } }));
    expect(error.fieldErrors[`points.${name}`]).toMatch(/does not say its unit/);
    const other = { [name]: at("zone-air-temp", "other") };
    expect((await refusalOf(() => confirmMapping(ctx, buildingId, { points: other }))).message).toMatch(/open/);
    const ids = confirmMapping(ctx, buildingId, { points: { [name]: at("zone-air-temp", "degF") } });
    await runTrendImports(ctx, buildingId, ids);
    // 72.1 °F = 22.2778 °C by hand; stored to 0.001 K.
    expect((await samplesOf(ctx, buildingId))[0]?.[2]).toBe(22.278);
    expect(listPoints(ctx.db, buildingId)[0]?.fileUnit).toBe("degF");
  });

  it("asks for the order of day and month, takes only an answer that is offered, and places samples by it", async () => {
    const { ctx, buildingId, at } = office();
    const bytes = bytesOf([`Timestamp,${AIR}`, "03/04/2026 08:00,72", "03/04/2026 08:15,73", "03/04/2026 08:30,72"]);
    const { run } = await stageTrendFile(ctx, buildingId, { name: "a.csv", bytes });
    const task = readMappingTask(ctx, buildingId);
    expect(task.fileAsks.map(({ ask }) => ask.what)).toEqual(["date-order"]);
    const points = { [task.lines[0]?.name ?? ""]: at("zone-air-temp") };
    const error = await refusalOf(() => confirmMapping(ctx, buildingId, { points }));
    expect(error.fieldErrors[`answers.${run.id}.date-order`]).toContain("which number is the month");
    const ids = confirmMapping(ctx, buildingId, { points, answersByRun: { [run.id]: { dateOrder: "dmy" } } });
    await runTrendImports(ctx, buildingId, ids);
    const [sample] = await samplesOf(ctx, buildingId);
    // 3 April 2026, 08:00 in Chicago is 13:00 UTC (daylight time).
    expect(sample?.[1]).toBe(Date.UTC(2026, 3, 3, 13) / 1000);
    const done = readImportRun(ctx, buildingId, run.id).run;
    expect(JSON.stringify(done.inspection)).not.toContain("date-order-unknown");
  });

  it("stores nothing of a point that is left out, though its unit is unknown, and remembers the choice", async () => {
    const { ctx, buildingId, at } = office();
    const columns = { [AIR]: TEMPS, "Plug strip 3": [10, 11, 12, 11] };
    await stageTrendFile(ctx, buildingId, { name: "a.csv", bytes: wideCsv(columns) });
    const name = readMappingTask(ctx, buildingId).lines.find((line) => line.name.startsWith("VAV"))?.name ?? "";
    const points = { [name]: at("zone-air-temp"), "Plug strip 3": { skip: true as const } };
    const [runId] = confirmMapping(ctx, buildingId, { points });
    const run = await runTrendImport(ctx, buildingId, runId ?? 0);
    expect(run).toMatchObject({ state: "done", samplesAdded: 4 });
    expect(listPoints(ctx.db, buildingId).map((point) => point.externalName)).toEqual([name]);
    await stageTrendFile(ctx, buildingId, { name: "b.csv", bytes: wideCsv({ ...columns, [AIR]: [70] }) });
    const again = readMappingTask(ctx, buildingId).lines;
    expect(again.map(({ leftOutBefore, known }) => [leftOutBefore, known?.kind])).toEqual([
      [true, undefined],
      [false, "zone-air-temp"],
    ]);
  });
});

describe("importing again", () => {
  it("changes nothing for the same bytes, and only what differs for an overlapping file", async () => {
    const { ctx, buildingId, at } = office();
    const first = { name: "a.csv", bytes: wideCsv({ "2-14 ZN-T (°F)": TEMPS }) };
    const points = { "2-14 ZN-T": at("zone-air-temp") };
    const one = await importMapped(ctx, buildingId, first, points);
    expect(one.run).toMatchObject({ state: "done", samplesAdded: 4, samplesChanged: 0, samplesSame: 0 });
    const before = await samplesOf(ctx, buildingId);
    expect((await importMapped(ctx, buildingId, first, points)).state).toBe("unchanged");
    expect(await samplesOf(ctx, buildingId)).toEqual(before);

    const second = { name: "b.csv", bytes: wideCsv({ "2-14 ZN-T (°F)": [72.1, 75, 71.5, 71.2, 70.9] }) };
    const two = await importMapped(ctx, buildingId, second, points);
    expect(two.run).toMatchObject({ samplesAdded: 1, samplesChanged: 1, samplesSame: 3 });
    expect((await samplesOf(ctx, buildingId)).map(([, , value]) => value)).toEqual([
      22.278, 23.889, 21.944, 21.778, 21.611,
    ]);
  });

  it("completes an interrupted import when the same file comes again", async () => {
    const { ctx, buildingId, at } = office();
    const file = { name: "a.csv", bytes: wideCsv({ "2-14 ZN-T (°F)": TEMPS }) };
    const { run } = await stageTrendFile(ctx, buildingId, file);
    const points = { "2-14 ZN-T": at("zone-air-temp") };
    confirmMapping(ctx, buildingId, { points });
    updateImportRun(ctx.db, run.id, { state: "interrupted" });
    const again = await stageTrendFile(ctx, buildingId, file);
    expect(again.state).toBe("waiting");
    expect(again.run.id).not.toBe(run.id);
    const ids = confirmMapping(ctx, buildingId, { points });
    await runTrendImports(ctx, buildingId, ids);
    expect(await samplesOf(ctx, buildingId)).toHaveLength(4);
    expect(readImportRun(ctx, buildingId, run.id).run.message).toBe(`Completed by import ${again.run.id}.`);
    expect((await stageTrendFile(ctx, buildingId, file)).state).toBe("unchanged");
  });
});

describe("the fate of every row", () => {
  it("adds up to the rows of the file, and rows that were not plainly accepted are kept by line", async () => {
    const { ctx, buildingId, at } = office();
    const more = [
      `${stampOf(0)},72.1`,
      `${stampOf(1)},70.0`,
      "??,71",
      `${stampOf(9)},fault`,
      `${stampOf(10)},-9999`,
      `${stampOf(11)},`,
    ];
    const bytes = wideCsv({ "2-14 ZN-T (°F)": TEMPS }, more);
    const { run } = await importMapped(ctx, buildingId, { name: "a.csv", bytes }, { "2-14 ZN-T": at("zone-air-temp") });
    expect(run.rowsInFile).toBe(10);
    const { rowsAccepted, rowsRepaired, rowsHeldBack, rowsRejected, rowsIgnored } = run;
    expect(rowsAccepted + rowsRepaired + rowsHeldBack + rowsRejected + rowsIgnored).toBe(10);
    expect(run.samplesAdded).toBe(4);
    const { rows } = readImportRun(ctx, buildingId, run.id);
    expect(rows.map((row) => [row.line, row.code])).toContainEqual([8, "row-unreadable"]);
    expect(rows.length).toBe(10 - rowsAccepted);
  });

  it("reports values that the limits of a kind leave out, with the run", async () => {
    const { ctx, buildingId, at } = office();
    const bytes = wideCsv({ "2-14 CLG SP (°F)": [74, 0, 74, 75] });
    const { run } = await importMapped(
      ctx,
      buildingId,
      { name: "a.csv", bytes },
      { "2-14 CLG SP": at("cooling-setpoint") },
    );
    expect(run.samplesAdded).toBe(3);
    const { findings } = run.inspection as { findings: { code: string; count?: number }[] };
    expect(findings).toContainEqual(expect.objectContaining({ code: "implausible-value", count: 1 }));
  });

  it("writes no point at all when one of them cannot be stored", async () => {
    const { ctx, buildingId, at } = office();
    const bytes = wideCsv({ "2-14 ZN-T (°F)": TEMPS, "2-14 Flow (cfm)": TEMPS });
    const { run } = await stageTrendFile(ctx, buildingId, { name: "a.csv", bytes });
    updateImportRun(ctx.db, run.id, {
      answers: { file: {}, points: { "2-14 ZN-T": at("zone-air-temp"), "2-14 Flow": at("damper-position") } },
    });
    const error = await refusalOf(() => runTrendImport(ctx, buildingId, run.id));
    expect(error.message).toContain("2-14 Flow");
    expect(listPoints(ctx.db, buildingId)).toEqual([]);
    expect(await samplesOf(ctx, buildingId)).toEqual([]);
    expect(readImportRun(ctx, buildingId, run.id).run.state).toBe("failed");
  });
});
