import { describe, expect, it } from "vitest";
import { pictureOf, reliefSentences, verdictSentence } from "@/app/buildings/[buildingId]/devices/circuits/view-model";
import type { CircuitEntry } from "@/lib/services/circuits/circuit-input";
import { feederLoads, readCircuit, readCircuits } from "@/lib/services/circuits/read";
import { addCircuit, hookUpByLabel, hookUpDevice, removeCircuit, reviseCircuit } from "@/lib/services/circuits/save";
import { readDevice } from "@/lib/services/devices/read";
import { registerDevice, retireDevice } from "@/lib/services/devices/register";
import { heaterInput, settingInput, smallOffice } from "@/test/factories/office";
import { refusalOf } from "@/test/support/refusal";

const circuitInput = (changes: Partial<CircuitEntry> = {}): CircuitEntry => ({
  panel: "LP-2",
  circuit: "14",
  ruleSet: "nec-2023",
  breakerRatingA: 20,
  voltageV: 120,
  baseContinuousA: 3,
  baseNonContinuousA: 0,
  ...changes,
});

const traced = { circuitMapping: "circuit-tracer" as const, outletKind: "duplex" as const };

function officeWithHeaters(count: number) {
  const office = smallOffice();
  const unread = settingInput({ basis: "class-default", currentA: null });
  const ids = Array.from({ length: count }, (_, i) =>
    registerDevice(
      office.ctx,
      office.buildingId,
      heaterInput({ label: `H-${i + 1}`, nameplateW: 1500, settings: [unread] }),
    ),
  );
  return { ...office, ids };
}

describe("a circuit on the register", () => {
  it("is judged with the devices that hang on it, and says who has to confirm it", () => {
    const { ctx, buildingId, ids } = officeWithHeaters(2);
    const circuitId = addCircuit(ctx, buildingId, circuitInput());
    for (const id of ids) hookUpDevice(ctx, buildingId, id, { ...traced, circuitId });
    const [view] = readCircuits(ctx, buildingId);
    if (!view) throw new Error("no circuit");
    // Two heaters of 1500 W at 120 V and 3 A beside: 28 A on 20 A, the fourth case of the reference table by hand.
    expect(view.assessment).toMatchObject({
      status: "ok",
      verdict: "over-rating",
      worstCaseA: 28,
      tripBand: "trips-within-1h",
    });
    const sentence = verdictSentence(view.assessment, 20);
    expect(sentence).toContain("28.0\u2009A with everything at its highest, 1.40 of 20.0\u2009A");
    expect(sentence.endsWith("A licensed electrician must confirm the circuit.")).toBe(true);
    expect(pictureOf(view)).toMatchObject({ totalA: 28, limitA: 16, ratingA: 20 });
    expect(reliefSentences(view)[0]).toContain("Moving or retiring H-1 (12.5\u2009A) leaves 15.5\u2009A");
  });

  it("thinks devices away without changing anything", () => {
    const { ctx, buildingId, ids } = officeWithHeaters(2);
    const circuitId = addCircuit(ctx, buildingId, circuitInput());
    for (const id of ids) hookUpDevice(ctx, buildingId, id, { ...traced, circuitId });
    const view = readCircuit(ctx, buildingId, circuitId, [ids[0] as number, 9999]);
    expect(view.assessment).toMatchObject({ verdict: "over-rating" });
    expect(view.without).toMatchObject({ status: "ok", verdict: "within-limits", worstCaseA: 15.5 });
  });

  it("counts no device that was removed, and a logged short run as not continuous", () => {
    const { ctx, buildingId, ids } = officeWithHeaters(2);
    const circuitId = addCircuit(ctx, buildingId, circuitInput());
    for (const id of ids) hookUpDevice(ctx, buildingId, id, { ...traced, circuitId });
    retireDevice(ctx, buildingId, ids[1] as number, "2025-06-30");
    ctx.db.$client.prepare("update device set longest_run_hours = 2.5 where id = ?").run(ids[0]);
    expect(readCircuit(ctx, buildingId, circuitId).assessment).toMatchObject({ continuousA: 3, nonContinuousA: 12.5 });
  });

  it("is established by nobody's silence: an empty base load is not none", () => {
    const { ctx, buildingId, ids } = officeWithHeaters(1);
    const circuitId = addCircuit(ctx, buildingId, circuitInput({ baseContinuousA: null }));
    hookUpByLabel(ctx, buildingId, "H-1", { ...traced, circuitId });
    expect(readDevice(ctx, buildingId, ids[0] as number).circuitId).toBe(circuitId);
    const { assessment } = readCircuit(ctx, buildingId, circuitId);
    expect(assessment.status).toBe("not-established");
    expect(verdictSentence(assessment, 20)).toMatch(/^Not established: the base load is not known\./);
  });

  it("refuses a name that is taken, numbers that cannot be and devices that are not there", async () => {
    const { ctx, buildingId } = officeWithHeaters(1);
    const circuitId = addCircuit(ctx, buildingId, circuitInput());
    expect((await refusalOf(() => addCircuit(ctx, buildingId, circuitInput()))).fieldErrors.circuit).toContain(
      "already",
    );
    reviseCircuit(ctx, buildingId, circuitId, circuitInput({ breakerRatingA: 15 }));
    const odd = { breakerRatingA: 2000, voltageV: Number.NaN, panel: "" };
    const { fieldErrors } = await refusalOf(() => addCircuit(ctx, buildingId, circuitInput(odd)));
    expect(fieldErrors.breakerRatingA).toContain("between 1 and 200 A; 2000 was typed");
    expect(fieldErrors.voltageV).toContain("not a number");
    expect(fieldErrors.panel).toContain("Name the panel");
    const nobody = await refusalOf(() => hookUpByLabel(ctx, buildingId, "H-9", { ...traced, circuitId }));
    expect(nobody.fieldErrors.deviceLabel).toContain('no device labelled "H-9"');
    expect((await refusalOf(() => hookUpByLabel(ctx, buildingId, "H-1", { ...traced, circuitId: 99 }))).code).toBe(
      "not-found",
    );
  });

  it("estimates a British panel's feeder with the office allowance, and no other", () => {
    const { ctx, buildingId, ids } = officeWithHeaters(2);
    const british = addCircuit(ctx, buildingId, circuitInput({ ruleSet: "iec-uk-2018", breakerRatingA: 32 }));
    for (const id of ids) hookUpDevice(ctx, buildingId, id, { ...traced, circuitId: british });
    // By hand: 12.5 A and 75 % of 12.5 A.
    expect(feederLoads(readCircuits(ctx, buildingId))).toMatchObject([{ panel: "LP-2", diversifiedA: 21.875 }]);
    reviseCircuit(ctx, buildingId, british, circuitInput());
    expect(feederLoads(readCircuits(ctx, buildingId))).toEqual([]);
  });

  it("lets its devices stay when it is taken off the register", () => {
    const { ctx, buildingId, ids } = officeWithHeaters(1);
    const circuitId = addCircuit(ctx, buildingId, circuitInput());
    hookUpDevice(ctx, buildingId, ids[0] as number, { ...traced, circuitId });
    removeCircuit(ctx, buildingId, circuitId);
    expect(readDevice(ctx, buildingId, ids[0] as number).circuitId).toBeNull();
    expect(readCircuits(ctx, buildingId)).toEqual([]);
  });
});
