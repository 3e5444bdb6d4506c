import { expect, test, vi } from "vitest";
import { casePage } from "@/app/buildings/[buildingId]/proposals/[proposalId]/case/markup/case-page";
import { composeCase } from "@/lib/business-case/compose-case";
import { caseFromProposal } from "@/lib/business-case/from-proposal/case-from-proposal";
import type { FrozenProposal } from "@/lib/proposals/frozen-proposal";
import { overrideAssumption } from "@/lib/services/assumptions/override";
import { readBusinessCase, readBusinessCaseWithFinance } from "@/lib/services/business-case/read";
import { registerDevice } from "@/lib/services/devices/register";
import { caseWorkbook } from "@/lib/services/exports/case-workbook";
import { decideProposal, readIssued } from "@/lib/services/proposals/decide";
import { expectedOf } from "@/lib/services/proposals/expected";
import { draftProposal } from "@/lib/services/proposals/save";
import { quantiles } from "@/lib/statistics/quantile";
import { heaterInput, smallOffice } from "@/test/factories/office";
import { bringTrends, bringWeather } from "@/test/factories/office-records";
import { proposalInputOf } from "@/test/factories/proposal";
import { refusalOf } from "@/test/support/refusal";

async function submittedProposal() {
  const office = smallOffice({ presentCoolingSetpointC: 21.5 });
  bringWeather(office);
  await bringTrends(office);
  registerDevice(office.ctx, office.buildingId, heaterInput());
  const levers = [
    { zoneId: office.zoneId, lever: "cooling-setpoint" as const, amount: 1 },
    { zoneId: office.zoneId, lever: "personal-device" as const, amount: 50 },
  ];
  const input = proposalInputOf(office.zoneId, { variants: [{ name: "Warmer", levers }] });
  const proposalId = draftProposal(office.ctx, office.buildingId, input);
  await decideProposal(office.ctx, office.buildingId, proposalId, { status: "submitted" });
  return { ...office, proposalId };
}

const printed = (document: Parameters<typeof casePage>[0]): string =>
  casePage(document, { paper: "a4", fontFaces: "", backHref: "" });

test("a case printed again after assumptions, prices and data have changed has identical figures", async () => {
  const { ctx, buildingId, proposalId } = await submittedProposal();
  const before = readBusinessCase(ctx, buildingId, proposalId);
  const workbook = await caseWorkbook(before.input);
  for (const [id, value] of [
    ["heater-in-overcooled-hours-fraction", 0.85],
    ["discount-rate-real", 0.06],
    ["change-life", 1.5],
    ["emission-factor/electricity", 0.1],
  ] as const)
    overrideAssumption(ctx, buildingId, id, { value, low: value * 0.95, high: value * 1.05, reason: "changed later" });
  registerDevice(ctx, buildingId, heaterInput({ label: "another heater" }));
  const after = readBusinessCase({ ...ctx, now: ctx.now + 400 * 86_400_000 }, buildingId, proposalId);
  expect(after).toEqual(before);
  expect(printed(after.document)).toBe(printed(before.document));
  vi.useFakeTimers({ now: new Date("2031-05-06T07:08:09Z"), toFake: ["Date"] });
  const later = await caseWorkbook(after.input).finally(() => vi.useRealTimers());
  expect(later).toEqual(workbook);
});

test("submitted again, the newer issue has the new figures and the older one still its own", async () => {
  const { ctx, buildingId, proposalId } = await submittedProposal();
  const first = readBusinessCase(ctx, buildingId, proposalId);
  const own = { value: 0.06, low: 0.06, high: 0.06, reason: "the finance department's rate" };
  overrideAssumption(ctx, buildingId, "discount-rate-real", own);
  await decideProposal(ctx, buildingId, proposalId, { status: "sent-back", comment: "With our rate, please." });
  await decideProposal(ctx, buildingId, proposalId, { status: "submitted" });
  const second = readBusinessCaseWithFinance(ctx, buildingId, proposalId);
  expect([first.issue, second.issue]).toEqual([1, 2]);
  expect(second.finance.plan.rate).toBe(0.06);
  expect(readBusinessCase(ctx, buildingId, proposalId, 1).document.sections).toEqual(first.document.sections);
});

test("a copy that was issued before seasons and circuits were counted reads as it did", async () => {
  const { ctx, buildingId, proposalId } = await submittedProposal();
  const copy = readIssued(ctx, buildingId, proposalId);
  if (!copy) throw new Error("the proposal was submitted");
  const older: FrozenProposal = {
    ...copy,
    variants: copy.variants.map(({ picture, ...variant }) => {
      const { electricPerDayKwh, whileItStands, circuits, ...rest } = picture;
      expect([electricPerDayKwh, whileItStands, circuits]).not.toContain(undefined);
      return { ...variant, picture: rest };
    }),
  };
  const text = printed(composeCase(caseFromProposal(older, "1-1")));
  expect(text).toContain("Reports of too cold");
  expect(text).not.toMatch(/Only what lies in|Circuits of these zones/);
  const [then, now] = [expectedOf(older), expectedOf(copy)];
  expect(then.kwhPerDayRange).toBeNull();
  expect(then.kwhPerDay).toBeGreaterThan(0);
  // Over the whole year the season's rise is diluted.
  expect(then.riseK).toBeLessThanOrEqual(now.riseK + 1e-9);
});

test.each([
  [0, true],
  [1, false],
  [9, false],
  [10, true],
  [undefined, true],
])("of zones where %s people have reported, a case tells the expected reports: %s", async (people, isTold) => {
  const { ctx, buildingId, proposalId } = await submittedProposal();
  const copy = readIssued(ctx, buildingId, proposalId);
  if (!copy?.inputs.reports) throw new Error("the proposal was submitted with its record");
  expect(copy.inputs.reports.zones.map((zone) => zone.people)).toEqual([0]);
  const reports = { ...copy.inputs.reports, zones: copy.inputs.reports.zones.map((zone) => ({ ...zone, people })) };
  const input = caseFromProposal({ ...copy, inputs: { ...copy.inputs, reports } }, "1-1");
  const text = printed(composeCase(input));
  expect(text.includes("Reports of too cold")).toBe(isTold);
  expect(text.includes("withheld where fewer than 10 people")).toBe(!isTold);
  expect(input.variants.map(({ coldReportsPerYear }) => coldReportsPerYear !== null)).toEqual([isTold]);
});

test("the draws of a case have the range that was frozen, and its life is that of the assumption", async () => {
  const { ctx, buildingId, proposalId } = await submittedProposal();
  const { input } = readBusinessCase(ctx, buildingId, proposalId);
  expect(input.saving.stated).toBeGreaterThan(0);
  expect(input.savingDraws).toHaveLength(input.lifeDraws.length);
  expect(Math.min(...input.lifeDraws)).toBeGreaterThan(0.99);
  expect(Math.max(...input.lifeDraws)).toBeLessThan(5.01);
  const stated = input.parts.reduce((sum, each) => sum + each.statedPerYear, 0);
  expect(stated).toBeCloseTo(input.saving.stated, 8);
  expect(input.tornado.length).toBeGreaterThan(0);
  const [p10, p50, p90] = quantiles(input.savingDraws, [0.1, 0.5, 0.9]);
  expect({ p10, p50, p90 }).toEqual({ p10: input.saving.p10, p50: input.saving.p50, p90: input.saving.p90 });
});

test("there is no case before the proposal is submitted, nor of an issue that was not made", async () => {
  const { ctx, buildingId, zoneId, proposalId } = await submittedProposal();
  const draft = draftProposal(ctx, buildingId, proposalInputOf(zoneId));
  expect((await refusalOf(() => readBusinessCase(ctx, buildingId, draft))).message).toMatch(/submit the proposal/);
  expect((await refusalOf(() => readBusinessCase(ctx, buildingId, proposalId, 7))).code).toBe("not-found");
  const stranger = { ...ctx, actor: { kind: "anonymous" as const } };
  expect((await refusalOf(() => readBusinessCase(stranger, buildingId, proposalId))).code).toBe("unauthenticated");
});
