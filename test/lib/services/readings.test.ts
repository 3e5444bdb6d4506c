import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { listImportRows, listImportRuns } from "@/db/queries/import-runs";
import { upsertPoint } from "@/db/queries/points";
import { zone } from "@/db/schema/zone";
import type { Context } from "@/lib/services/context";
import type { ReadingsInput } from "@/lib/services/readings/readings-input";
import { takeReadings } from "@/lib/services/readings/take";
import { testContext } from "@/test/support/database";
import { refusalOf } from "@/test/support/refusal";
import { insertTestBuilding } from "@/test/support/test-building";

const AIR = "VAV-2-14 ZN-T";
const stampAt = (i: number) => new Date(Date.UTC(2025, 5, 27, 8) + i * 60_000).toISOString();
const readingsOf = (values: readonly number[]) => values.map((value, i) => ({ at: stampAt(i), value }));

function office() {
  const ctx = testContext();
  const buildingId = insertTestBuilding(ctx.db);
  const zoneId = ctx.db.insert(zone).values({ buildingId, code: "2-14" }).returning().get().id;
  const make = (externalName: string, kind: "zone-air-temp" | "occupancy", fileUnit: string) =>
    upsertPoint(ctx.db, { buildingId, externalName, kind, zoneId, fileUnit, sampling: "interval" }).id;
  const air = make(AIR, "zone-air-temp", "degF");
  make("VAV-2-14 OCC", "occupancy", "state");
  const collector = { ...ctx, actor: { kind: "collector" as const, name: "plant room", tokenId: 1, buildingId } };
  return { ctx: collector, buildingId, air };
}

async function samplesOf(ctx: Context, series: number): Promise<[number, number][]> {
  const samples: [number, number][] = [];
  for await (const slice of ctx.trends.read([series], 0, 4_000_000_000))
    for (let i = 0; i < slice.ts.length; i++)
      samples.push([slice.ts[i] as number, (slice.v[i] as number) / 10 ** slice.decimals]);
  return samples;
}

describe("readings sent one by one", () => {
  it("are stored in SI by the unit of the call or of the mapping, and change nothing when they are sent again", async () => {
    const { ctx, buildingId, air } = office();
    const call: ReadingsInput = { point: AIR, unit: "°F", readings: readingsOf([72.1, 73]) };
    expect(await takeReadings(ctx, buildingId, call)).toMatchObject({ accepted: 2, samples: { added: 2, same: 0 } });
    const { unit: _unit, ...unitless } = call;
    expect(await takeReadings(ctx, buildingId, unitless)).toMatchObject({ samples: { added: 0, changed: 0, same: 2 } });
    // 72.1 °F = 22.2778 °C and 73 °F = 22.7778 °C by hand; stored to 0.001 K.
    expect(await samplesOf(ctx, air)).toEqual([
      [Date.UTC(2025, 5, 27, 8) / 1000, 22.278],
      [Date.UTC(2025, 5, 27, 8) / 1000 + 60, 22.778],
    ]);
    const runs = listImportRuns(ctx.db, buildingId);
    expect(runs).toMatchObject([
      {
        kind: "readings",
        state: "done",
        fileName: "Readings from plant room, 2025-07-01",
        rowsInFile: 4,
        rowsAccepted: 4,
        samplesAdded: 2,
        samplesSame: 2,
      },
    ]);
    expect(runs[0]?.message).toBe("2 samples added, 0 changed, 2 as they were.");
  });

  it("are each accepted, repaired or rejected with the reason", async () => {
    const { ctx, buildingId, air } = office();
    const result = await takeReadings(ctx, buildingId, {
      point: AIR,
      unit: "degC",
      readings: [
        { at: "2025-06-30T08:00:00-04:00", value: 22 },
        { at: "2025-06-30T12:15:00.4Z", value: 22.1 },
        { at: "2025-06-30T08:30:00", value: 22.2 },
        { at: "30/06/2025 08:45", value: 22.3 },
        { at: "2025-02-30T08:00:00Z", value: 22.3 },
        { at: "2025-06-30T13:00:00Z", value: 22.4, status: "fault" },
        { at: "2025-06-30T13:15:00Z", value: 22.5, status: "overridden" },
        { at: "2025-06-30T13:30:00Z", value: 22.6, status: "purple" },
        { at: "2025-06-30T13:45:00Z", value: null },
        { at: "2025-06-30T14:00:00Z", value: 999 },
        { at: "2025-07-09T14:00:00Z", value: 22 },
        { at: "1999-12-31T23:59:59Z", value: 22 },
        { at: "2025-06-30T15:00:00Z", value: 22 },
        { at: "2025-06-30T11:00:00-04:00", value: 23 },
      ],
    });
    expect(result).toMatchObject({ readings: 14, accepted: 3, repaired: 1, rejected: 10 });
    expect(Object.fromEntries(result.rejections.map(({ at, reason }) => [at, reason]))).toEqual({
      "2025-06-30T08:30:00": expect.stringContaining("has no offset"),
      "30/06/2025 08:45": expect.stringContaining("not a time"),
      "2025-02-30T08:00:00Z": expect.stringContaining("not a time"),
      "2025-06-30T13:00:00Z": "its status is fault",
      "2025-06-30T13:30:00Z": "its status, purple, is not known",
      "2025-06-30T13:45:00Z": "no value",
      "2025-06-30T14:00:00Z": expect.stringContaining("999 cannot be"),
      "2025-07-09T14:00:00Z": expect.stringContaining("ahead of now"),
      "1999-12-31T23:59:59Z": expect.stringContaining("before the year 2000"),
      "2025-06-30T15:00:00Z": expect.stringContaining("given again"),
    });
    expect((await samplesOf(ctx, air)).map(([, value]) => value)).toEqual([22, 22.1, 22.5, 23]);
    expect(listImportRows(ctx.db, result.runId)).toHaveLength(10);
  });

  it("take states as true and false", async () => {
    const { ctx, buildingId } = office();
    const readings = [
      { at: stampAt(0), value: true },
      { at: stampAt(1), value: 0 },
      { at: stampAt(2), value: 7 },
    ];
    expect(await takeReadings(ctx, buildingId, { point: "VAV-2-14 OCC", readings })).toMatchObject({
      accepted: 2,
      rejected: 1,
    });
  });

  it("come out whole whatever is sent: every reading is counted once", async () => {
    const { ctx, buildingId } = office();
    const reading = fc.record({
      at: fc.oneof(
        fc.integer({ min: 0, max: 40 }).map(stampAt),
        fc.constant("2025-06-30T08:00"),
        fc.string({ maxLength: 12 }),
      ),
      value: fc.oneof(fc.double({ min: -500, max: 500, noNaN: true }), fc.constant(null), fc.boolean()),
    });
    await fc.assert(
      fc.asyncProperty(fc.array(reading, { minLength: 1, maxLength: 60 }), async (readings) => {
        const { accepted, repaired, rejected, samples, rejections } = await takeReadings(ctx, buildingId, {
          point: AIR,
          readings,
        });
        expect(accepted + repaired + rejected).toBe(readings.length);
        expect(samples.added + samples.changed + samples.same).toBe(accepted + repaired);
        expect(rejections).toHaveLength(rejected);
      }),
      { numRuns: 60, seed: 20_261_125 },
    );
  });
});

describe("calls that are refused as a whole", () => {
  it("name every point that is not mapped, and store nothing of the others", async () => {
    const { ctx, buildingId, air } = office();
    const refused = await refusalOf(() =>
      takeReadings(ctx, buildingId, [
        { point: AIR, unit: "degF", readings: readingsOf([72]) },
        { point: "VAV-9 ZN-T", unit: "degF", readings: readingsOf([72]) },
      ]),
    );
    expect(refused.message).toContain('not mapped in this building: "VAV-9 ZN-T". Nothing was stored.');
    expect(await samplesOf(ctx, air)).toEqual([]);
    expect(listImportRuns(ctx.db, buildingId)).toEqual([]);
  });

  it("take 5,000 readings and not 5,001, over all points of a call", async () => {
    const { ctx, buildingId, air } = office();
    const values = Array.from({ length: 5000 }, (_, i) => 70 + (i % 5));
    expect(await takeReadings(ctx, buildingId, { point: AIR, readings: readingsOf(values) })).toMatchObject({
      accepted: 5000,
    });
    const one = { point: AIR, readings: readingsOf([80]) };
    const refused = await refusalOf(() =>
      takeReadings(ctx, buildingId, [{ point: AIR, readings: readingsOf(values) }, one]),
    );
    expect(refused).toMatchObject({ code: "too-large", message: expect.stringContaining("5001 readings") });
    expect(await samplesOf(ctx, air)).toHaveLength(5000);
  });

  it("have a unit that the kind of the point cannot have, or are not in the form asked for", async () => {
    const { ctx, buildingId } = office();
    const wrong = await refusalOf(() =>
      takeReadings(ctx, buildingId, { point: AIR, unit: "cfm", readings: readingsOf([300]) }),
    );
    expect(wrong.message).toMatch(/needs a temperature.*Nothing was stored/);
    for (const call of [null, {}, [], { point: AIR, readings: [] }, { point: AIR, readings: [{ at: 5, value: 1 }] }])
      expect((await refusalOf(() => takeReadings(ctx, buildingId, call as ReadingsInput))).code).toBe("invalid");
  });

  it("come from somebody without the right, or from a collector of another building", async () => {
    const { ctx, buildingId } = office();
    const call = { point: AIR, readings: readingsOf([72]) };
    const elsewhere = insertTestBuilding(ctx.db);
    expect(await refusalOf(() => takeReadings(ctx, elsewhere, call))).toMatchObject({ code: "forbidden" });
    const stranger = { ...ctx, actor: { kind: "anonymous" as const } };
    expect(await refusalOf(() => takeReadings(stranger, buildingId, call))).toMatchObject({ code: "unauthenticated" });
  });
});
