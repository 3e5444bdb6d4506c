import { describe, expect, it } from "vitest";
import { listPoints } from "@/db/queries/points";
import { createBuilding, reviseBuilding } from "@/lib/services/buildings/save";
import { noteVerdict } from "@/lib/services/zone-verdicts/note";
import { readZoneVerdictRecord } from "@/lib/services/zone-verdicts/read";
import { readZonesOverview } from "@/lib/services/zones/overview";
import { reviseZone } from "@/lib/services/zones/save";
import { buildingInputOf } from "@/test/factories/building";
import { smallOffice } from "@/test/factories/office";
import { bringTrends } from "@/test/factories/office-records";
import { refusalOf } from "@/test/support/refusal";

/** Zone 2-14 at its minimum airflow of 120 L/s, 24 % of design, and 1.5 K below the target. */
async function coldOffice() {
  const office = smallOffice();
  await bringTrends(office);
  const airflows = { designAirflowM3ps: 0.5, minimumAirflowM3ps: 0.12 };
  reviseZone(office.ctx, office.buildingId, office.zoneId, { code: "2-14", floorAreaM2: 120, ...airflows });
  return office;
}

const confirmed = { stance: "confirmed", note: "" } as const;

describe("what people say of a verdict", () => {
  it("is kept with name, date, the verdict and its causes, newest first", async () => {
    const { ctx, buildingId, zoneId } = await coldOffice();
    await noteVerdict(ctx, buildingId, zoneId, confirmed);
    const later = { ...ctx, now: ctx.now + 60_000 };
    await noteVerdict(later, buildingId, zoneId, {
      stance: "rejected",
      note: " Diffuser is shut. ",
      verdictSeen: "minimum-airflow-first",
    });
    const { notes } = await readZoneVerdictRecord(ctx, buildingId, zoneId, null);
    expect(notes.map(({ stance, note, enteredAtMs }) => [stance, note, enteredAtMs])).toEqual([
      ["rejected", "Diffuser is shut.", ctx.now + 60_000],
      ["confirmed", "", ctx.now],
    ]);
    expect(notes[0]).toMatchObject({
      enteredBy: "Robin Vale",
      verdict: "minimum-airflow-first",
      causes: ["degree-hours-at-minimum"],
      dataChanged: false,
    });
  });

  it.each([
    [
      "a new sample",
      async ({ ctx, buildingId, zoneId }: Awaited<ReturnType<typeof coldOffice>>) => {
        const air = listPoints(ctx.db, buildingId).find(
          (each) => each.kind === "zone-air-temp" && each.zoneId === zoneId,
        );
        const slice = {
          series: air?.id ?? 0,
          ts: Float64Array.of(Date.UTC(2025, 6, 1) / 1000),
          v: Int32Array.of(21_400),
          decimals: 3,
        };
        await ctx.trends.write([slice], 2);
      },
    ],
    [
      "another minimum airflow",
      async ({ ctx, buildingId, zoneId }: Awaited<ReturnType<typeof coldOffice>>) =>
        reviseZone(ctx, buildingId, zoneId, {
          code: "2-14",
          floorAreaM2: 120,
          designAirflowM3ps: 0.5,
          minimumAirflowM3ps: 0.1,
        }),
    ],
    [
      "another target",
      async ({ ctx, buildingId }: Awaited<ReturnType<typeof coldOffice>>) =>
        reviseBuilding(ctx, buildingId, buildingInputOf({ targetZoneAirTempC: 22.5 })),
    ],
  ] as const)("says that the data have changed after %s", async (_, change) => {
    const office = await coldOffice();
    const { ctx, buildingId, zoneId } = office;
    await noteVerdict(ctx, buildingId, zoneId, confirmed);
    await change(office);
    expect((await readZoneVerdictRecord(ctx, buildingId, zoneId, null)).notes[0]?.dataChanged).toBe(true);
  });

  it("is not called changed when only the zone's name or its area is", async () => {
    const { ctx, buildingId, zoneId } = await coldOffice();
    await noteVerdict(ctx, buildingId, zoneId, confirmed);
    const airflows = { designAirflowM3ps: 0.5, minimumAirflowM3ps: 0.12 };
    reviseZone(ctx, buildingId, zoneId, { code: "2-14", name: "East bay", floorAreaM2: 121, ...airflows });
    expect((await readZoneVerdictRecord(ctx, buildingId, zoneId, null)).notes[0]?.dataChanged).toBe(false);
  });

  it("is refused without a word of what was found, of another verdict than the one seen, and where there is none", async () => {
    const { ctx, buildingId, zoneId, otherZoneId } = await coldOffice();
    const refused = (input: Parameters<typeof noteVerdict>[3], zone = zoneId) =>
      refusalOf(() => noteVerdict(ctx, buildingId, zone, input));
    expect((await refused({ stance: "rejected", note: "" })).fieldErrors.note).toContain("found on site");
    expect((await refused({ stance: "noted", note: "  " })).fieldErrors.note).toBeDefined();
    expect((await refused({ stance: "" as "noted" })).fieldErrors.stance).toContain("confirm");
    expect((await refused({ ...confirmed, verdictSeen: "healthy" })).code).toBe("conflict");
    expect((await refused(confirmed, otherZoneId)).code).toBe("precondition");
    expect((await refused(confirmed, 999)).code).toBe("not-found");
    expect((await readZoneVerdictRecord(ctx, buildingId, zoneId, null)).notes).toEqual([]);
  });

  it("is for facilities people only, and for zones of the building that is asked", async () => {
    const { ctx, buildingId, zoneId } = await coldOffice();
    const anyone = { ...ctx, actor: { kind: "anonymous" } as const };
    expect((await refusalOf(() => noteVerdict(anyone, buildingId, zoneId, confirmed))).code).toBe("unauthenticated");
    expect((await refusalOf(() => readZoneVerdictRecord(anyone, buildingId, zoneId, null))).code).toBe(
      "unauthenticated",
    );
    const other = createBuilding(ctx, buildingInputOf({ name: "Beech Court" }));
    expect((await refusalOf(() => noteVerdict(ctx, other, zoneId, confirmed))).code).toBe("not-found");
  });
});

it("a zone at its minimum airflow is shown what the airflow that it needs would make of it", async () => {
  const { ctx, buildingId, zoneId, otherZoneId } = await coldOffice();
  const { zones } = await readZonesOverview(ctx, buildingId);
  const analysisOf = (id: number) => zones.find(({ zone }) => zone.id === id)?.analysis ?? null;
  const { prediction } = await readZoneVerdictRecord(ctx, buildingId, zoneId, analysisOf(zoneId));
  // Needed 12 % of 500 L/s; no supply air is trended: 13 + 8.5 * 0.12 / 0.06 = 30, no higher than the target.
  expect(prediction).toMatchObject({ status: "ok", nowC: 21.5, requiredAirflowM3ps: 0.06, thenC: 23 });
  expect((await readZoneVerdictRecord(ctx, buildingId, otherZoneId, analysisOf(otherZoneId))).prediction).toBeNull();
});
