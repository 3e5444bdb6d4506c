import {
  findVerificationPlan,
  insertVerificationResult,
  listVerificationResults,
  type VerificationPlanRow,
  type VerificationResultRow,
} from "@/db/queries/verifications";
import type { FrozenProposal } from "@/lib/proposals/frozen-proposal";
import { weatherDifference } from "@/lib/proposals/proof/comparable-days";
import { type Detectability, detectability, energyProof } from "@/lib/proposals/proof/energy-proof";
import { heaterProof } from "@/lib/proposals/proof/heater-proof";
import { differenceProof, overallVerdict } from "@/lib/proposals/proof/proof-of";
import { temperatureWords } from "@/lib/proposals/proof/proof-words";
import { reportProof } from "@/lib/proposals/proof/report-proof";
import { switchbackProof } from "@/lib/proposals/proof/switchback-proof";
import { weekPairs } from "@/lib/proposals/proof/week-pairs";
import { trialCalendar } from "@/lib/proposals/trial-calendar";
import { PROOF_VERDICT_WORDS } from "@/lib/proposals/verification-plan";
import type { VerificationResult } from "@/lib/proposals/verification-result";
import type { Working } from "@/lib/working/working";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { readIssued } from "./decide";
import { expectedOf } from "./expected";
import { findProposalOrRefuse } from "./find";
import { heatersOn, meterDays, reportCounts, within, zoneAirDays } from "./proof-data";
import { energyOf, expectedDay } from "./proven-energy";

const CONFIDENCE = 0.9;

/** Works out what the data say of a proposal by its plan, and keeps it with who and when. */
export async function verifyProposal(ctx: Context, buildingId: number, id: number): Promise<VerificationResult> {
  const by = actorName(requireFacilities(ctx));
  const plan = findVerificationPlan(ctx.db, id);
  if (!plan) throw new ServiceError("precondition", "Set the windows before and after first.");
  const issued = issuedOrRefuse(ctx, buildingId, id);
  const { proofs, ...energy } = await proofsOf(ctx, buildingId, issued, plan);
  const verdict = overallVerdict(proofs);
  const result = { verdict, sentence: `${PROOF_VERDICT_WORDS[verdict]}.`, proofs, by: planOf(plan), ...energy };
  insertVerificationResult(ctx.db, { proposalId: id, verdict, result, enteredBy: by, enteredAtMs: ctx.now });
  return result;
}

/** What was worked out so far, newest first. */
export function readVerifications(ctx: Context, buildingId: number, id: number): VerificationResultRow[] {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  findProposalOrRefuse(ctx, buildingId, id);
  return listVerificationResults(ctx.db, id);
}

/** What the building's meter can show at all, said before the wait: least saving a day beside the expected one. */
export async function readDetectability(
  ctx: Context,
  buildingId: number,
  id: number,
): Promise<{ daysAfter: number; expected: Working; found: Detectability } | null> {
  requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const plan = findVerificationPlan(ctx.db, id);
  const issued = readIssued(ctx, buildingId, id);
  const metered = plan && issued ? await meterDays(ctx, building) : null;
  if (!plan || !issued || !metered) return null;
  const before = within(metered.days, { from: plan.beforeFrom, to: plan.beforeTo });
  const planned = (Date.parse(plan.afterTo) - Date.parse(plan.afterFrom)) / 86_400_000 + 1;
  const daysAfter = Math.max(1, Math.round((planned * issued.inputs.occupiedDays) / 365));
  const expected = expectedDay(id, expectedOf(issued));
  return { daysAfter, expected, found: detectability(before, daysAfter) };
}

const planOf = (plan: VerificationPlanRow): NonNullable<VerificationResult["by"]> => ({
  method: plan.method,
  before: { from: plan.beforeFrom, to: plan.beforeTo },
  after: { from: plan.afterFrom, to: plan.afterTo },
});

function issuedOrRefuse(ctx: Context, buildingId: number, id: number): FrozenProposal {
  const issued = readIssued(ctx, buildingId, id);
  if (!issued) throw new ServiceError("precondition", "Only an issued proposal can be verified: submit it first.");
  return issued;
}

async function proofsOf(
  ctx: Context,
  buildingId: number,
  issued: FrozenProposal,
  plan: VerificationPlanRow,
): Promise<Pick<VerificationResult, "proofs" | "sums" | "saving">> {
  const building = findBuildingOrRefuse(ctx, buildingId);
  const expected = expectedOf(issued);
  const { before, after } = planOf(plan);
  const { air, belowTarget } = await zoneAirDays(ctx, building, expected.zoneIds);
  const metered = await meterDays(ctx, building);
  const energy = metered?.days ?? [];
  const airMeant = {
    id: "zone-air",
    label: "Zone air of the proposal's zones, occupied",
    unit: "°C",
    meant: { sign: 1, expected: expected.riseK },
    words: temperatureWords(building.temperatureUnit),
  } as const;
  const airProof = differenceProof(weatherDifference(within(air, before), within(air, after), CONFIDENCE), {
    ...airMeant,
    confidence: CONFIDENCE,
  });
  const khProof = differenceProof(
    weatherDifference(within(belowTarget, before), within(belowTarget, after), CONFIDENCE),
    {
      id: "degree-hours",
      label: "Degree-hours below the target, of a zone and occupied day",
      unit: "K·h",
      confidence: CONFIDENCE,
      meant: { sign: -1, expected: (expected.degreeHoursLeft - 1) * meanOf(within(belowTarget, before)) },
    },
  );
  const datesIn = (window: typeof before): number => within(air, window).length;
  const reportsBefore = reportCounts(ctx, building, expected.zoneIds, before, datesIn(before));
  const reportsAfter = reportCounts(ctx, building, expected.zoneIds, after, datesIn(after));
  const hasExposure = reportsBefore.cold.exposure > 0 && reportsAfter.cold.exposure > 0;
  const { switchback } = issued.plan;
  const isSwitchback = plan.method === "switchback" && switchback !== null;
  const calendar = isSwitchback ? trialCalendar(switchback, switchback.beginsOn ?? plan.afterFrom) : [];
  const measured =
    metered === null
      ? null
      : isSwitchback
        ? switchbackProof(weekPairs(energyValues(within(energy, after)), calendar), {
            id: "energy",
            label: "Electricity of an occupied day, by alternate weeks",
            unit: "kWh",
            meant: { sign: -1, expected: -expected.kwhPerDay },
          })
        : energyProof(within(energy, before), within(energy, after), expected.kwhPerDay, metered.meter);
  const airProven = isSwitchback ? switchbackProof(weekPairs(within(air, after), calendar), airMeant) : airProof;
  const proofs = [
    airProven,
    ...(isSwitchback ? [] : [khProof]),
    ...(hasExposure
      ? [
          reportProof("cold-reports", reportsBefore.cold, reportsAfter.cold, expected.coldRatio),
          reportProof("hot-reports", reportsBefore.hot, reportsAfter.hot, expected.hotRatio),
        ]
      : []),
    heaterProof(
      heatersOn(ctx, buildingId, expected.zoneIds, before.to),
      heatersOn(ctx, buildingId, expected.zoneIds, after.to),
      expected.heatersGiven,
    ),
    ...(measured ? [measured] : []),
  ];
  if (!measured || !metered) return { proofs };
  return {
    proofs,
    ...energyOf({
      issued,
      expected,
      energy: measured,
      isAvoided: !isSwitchback,
      air: airProven,
      meter: metered.meter.name,
      days: within(energy, after).length,
    }),
  };
}

const meanOf = (days: readonly { value: number }[]): number =>
  days.reduce((sum, each) => sum + each.value, 0) / Math.max(1, days.length);

const energyValues = (days: readonly { date: string; outdoorC: number; energyKwh: number }[]) =>
  days.map(({ date, outdoorC, energyKwh }) => ({ date, outdoorC, value: energyKwh }));
