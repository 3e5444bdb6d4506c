import { describe, expect, it } from "vitest";
import { overrideAssumption } from "@/lib/services/assumptions/override";
import { registerDevice } from "@/lib/services/devices/register";
import { confirmVentilation, decideProposal, readIssued } from "@/lib/services/proposals/decide";
import { readProposal, readProposals } from "@/lib/services/proposals/find";
import { freezeProposal } from "@/lib/services/proposals/freeze";
import { draftProposal, reviseProposal } from "@/lib/services/proposals/save";
import { heaterInput, smallOffice } from "@/test/factories/office";
import { bringTrends, bringWeather } from "@/test/factories/office-records";
import { proposalInputOf } from "@/test/factories/proposal";
import { refusalOf } from "@/test/support/refusal";

async function officeWithRecord() {
  const office = smallOffice({ presentCoolingSetpointC: 21.5 });
  bringWeather(office);
  await bringTrends(office);
  return office;
}

describe("a proposal", () => {
  it("is drafted, revised, submitted with a frozen copy, approved and adopted, with who and when", async () => {
    const { ctx, buildingId, zoneId } = await officeWithRecord();
    const id = draftProposal(ctx, buildingId, proposalInputOf(zoneId));
    reviseProposal(ctx, buildingId, id, proposalInputOf(zoneId, { title: "Second floor, warmer" }));
    await decideProposal(ctx, buildingId, id, { status: "submitted", comment: "Ready." });
    await decideProposal(ctx, buildingId, id, { status: "approved" });
    await decideProposal(ctx, buildingId, id, { status: "in-force" });
    await decideProposal(ctx, buildingId, id, { status: "adopted" });
    const { status, events, issues, row } = readProposal(ctx, buildingId, id);
    expect(status).toBe("adopted");
    expect(row.title).toBe("Second floor, warmer");
    expect(row.investmentMinor).toBe(120_000);
    expect(events.map((each) => each.status)).toEqual(["draft", "submitted", "approved", "in-force", "adopted"]);
    expect(events.every((each) => each.enteredBy !== "" && each.enteredAtMs === ctx.now)).toBe(true);
    expect(issues).toHaveLength(1);
    expect(readProposals(ctx, buildingId)).toHaveLength(1);
  });

  it("reads the same as issued after its assumptions have changed", async () => {
    const { ctx, buildingId, zoneId } = await officeWithRecord();
    registerDevice(ctx, buildingId, heaterInput());
    const swap = { name: "Foot warmers", levers: [{ zoneId, lever: "personal-device" as const, amount: 100 }] };
    const id = draftProposal(ctx, buildingId, proposalInputOf(zoneId, { variants: [swap] }));
    await decideProposal(ctx, buildingId, id, { status: "submitted" });
    const issued = readIssued(ctx, buildingId, id);
    const assumption = "heater-in-overcooled-hours-fraction";
    const own = { value: 0.85, low: 0.8, high: 0.9, reason: "measured by a test" };
    overrideAssumption(ctx, buildingId, assumption, own);
    expect(readIssued(ctx, buildingId, id)).toEqual(issued);
    const anew = await freezeProposal(ctx, buildingId, id);
    const savings = [issued, anew].map((each) => each?.variants[0]?.picture.saving.stated ?? 0);
    expect(savings[0]).toBeGreaterThan(0);
    expect(savings[1]).toBeGreaterThan(savings[0] ?? 0);
    expect(issued?.assumptions.find((each) => each.id === assumption)?.value).toBe(0.6);
  });

  it("that lowers a minimum airflow is not approved before a named engineer's check", async () => {
    const { ctx, buildingId, zoneId } = await officeWithRecord();
    const lower = { name: "Airflow", levers: [{ zoneId, lever: "minimum-airflow" as const, amount: 40 }] };
    const id = draftProposal(ctx, buildingId, proposalInputOf(zoneId, { variants: [lower] }));
    await decideProposal(ctx, buildingId, id, { status: "submitted" });
    const refusal = await refusalOf(() => decideProposal(ctx, buildingId, id, { status: "approved" }));
    expect(refusal.code).toBe("precondition");
    expect(refusal.message).toMatch(/named engineer/);
    confirmVentilation(ctx, buildingId, id, {
      engineer: "A. Sample, PE",
      onDate: "2025-07-01",
      note: "Rates of the local code, zone by zone.",
    });
    await decideProposal(ctx, buildingId, id, { status: "approved" });
    expect(readProposal(ctx, buildingId, id).status).toBe("approved");
  });

  it("loses its check of the ventilation when its minimum airflows change", async () => {
    const { ctx, buildingId, zoneId } = await officeWithRecord();
    const lower = (amount: number) => [
      { name: "Airflow", levers: [{ zoneId, lever: "minimum-airflow" as const, amount }] },
    ];
    const id = draftProposal(ctx, buildingId, proposalInputOf(zoneId, { variants: lower(20) }));
    confirmVentilation(ctx, buildingId, id, { engineer: "A. Sample, PE", onDate: "2025-07-01", note: "local code" });
    reviseProposal(ctx, buildingId, id, proposalInputOf(zoneId, { variants: lower(20), title: "Other words" }));
    expect(readProposal(ctx, buildingId, id).row.ventilationEngineer).toBe("A. Sample, PE");
    reviseProposal(ctx, buildingId, id, proposalInputOf(zoneId, { variants: lower(40) }));
    expect(readProposal(ctx, buildingId, id).row.ventilationEngineer).toBeNull();
  });

  it("refuses steps out of order, changes after it was submitted, and figures without weather", async () => {
    const { ctx, buildingId, zoneId } = await officeWithRecord();
    const id = draftProposal(ctx, buildingId, proposalInputOf(zoneId));
    expect((await refusalOf(() => decideProposal(ctx, buildingId, id, { status: "adopted" }))).code).toBe("conflict");
    await decideProposal(ctx, buildingId, id, { status: "submitted" });
    const late = await refusalOf(() => reviseProposal(ctx, buildingId, id, proposalInputOf(zoneId)));
    expect(late.message).toMatch(/submitted/);
    const mute = await refusalOf(() => decideProposal(ctx, buildingId, id, { status: "declined" }));
    expect(mute.fieldErrors.comment).toMatch(/why/);
    await decideProposal(ctx, buildingId, id, { status: "sent-back", comment: "Two zones too many." });
    reviseProposal(ctx, buildingId, id, proposalInputOf(zoneId));

    const bare = smallOffice();
    const other = draftProposal(bare.ctx, bare.buildingId, proposalInputOf(bare.zoneId));
    const refusal = await refusalOf(() => decideProposal(bare.ctx, bare.buildingId, other, { status: "submitted" }));
    expect(refusal.message).toMatch(/weather year/);
  });

  it("names every field that is not as it should be", async () => {
    const { ctx, buildingId, zoneId } = smallOffice();
    const input = proposalInputOf(zoneId, { title: "", seasonFromMonth: 13 });
    input.variants[0]?.levers.push({ zoneId, lever: "heating-setpoint", amount: 9 });
    const refusal = await refusalOf(() => draftProposal(ctx, buildingId, input));
    expect(Object.keys(refusal.fieldErrors)).toEqual(["title", "seasonFromMonth", "variants.0.levers.1.amount"]);
    const stranger = await refusalOf(() => draftProposal(ctx, buildingId, proposalInputOf(9999)));
    expect(stranger.message).toMatch(/no longer in the building/);
  });
});
