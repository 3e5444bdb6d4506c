import type { BuildingRow } from "@/db/queries/buildings";
import { listComfortReports } from "@/db/queries/comfort";
import { listProposalEvents, listProposalIssues, listProposals } from "@/db/queries/proposals";
import { listSetpointChanges } from "@/db/queries/setpoint-changes";
import { isOnTrial } from "@/lib/proposals/proposal-status";
import { type RuleState, watchRules } from "@/lib/proposals/stop-rules";
import type { LocalDate } from "@/lib/time/civil-date";
import { localDateAt } from "@/lib/time/local-date";
import { isHot } from "@/lib/trends/diagnosis/report-counts";
import type { Context } from "../context";
import type { ResultKind } from "../kept/result-kind";
import { expectedOf } from "./expected";
import { readZoneDays } from "./zone-days";

/** How a trial stands by its stop rules. `until` is the last occupied day with zone air, null before there is one. */
export type WatchedTrial = { proposalId: number; since: LocalDate; until: LocalDate | null; rules: RuleState[] };

/** Trials in force or held of a building, held against their rules; what is adopted or rolled back is no trial any more. */
export const WATCHED_TRIALS: ResultKind<{ trials: WatchedTrial[] }> = {
  name: "watched-trials",
  version: 1,
  inputs: ["trends", "mapping", "zones", "reports", "building", "proposals"],
  workOut: async (ctx, building) => ({ trials: await watchTrials(ctx, building) }),
};

async function watchTrials(ctx: Context, building: BuildingRow): Promise<WatchedTrial[]> {
  const running = listProposals(ctx.db, building.id).flatMap(({ id }) => {
    const status = listProposalEvents(ctx.db, id).at(-1)?.status;
    const copy = listProposalIssues(ctx.db, id)[0]?.copy;
    if (!copy || !status || !isOnTrial(status)) return [];
    const since = beganOn(ctx, building, id);
    return since ? [{ id, since, rules: copy.plan.stopRules, zoneIds: expectedOf(copy).zoneIds }] : [];
  });
  if (running.length === 0) return [];
  const zoneIds = [...new Set(running.flatMap((each) => each.zoneIds))];
  const wanted = { kind: "zone-air-temp", of: (grids: { zoneAirTempC: Float64Array }) => grids.zoneAirTempC } as const;
  const zones = (await readZoneDays(ctx, building, wanted, zoneIds))?.zones ?? [];
  const hot = listComfortReports(ctx.db, building.id, 0)
    .filter((each) => isHot({ ...each, desk: null, zoneAirTempC: null }))
    .map((each) => ({ zoneId: each.zoneId, date: localDateAt(each.reportedAtMs, building.timeZone) }));
  return running.map(({ id, since, rules, zoneIds }): WatchedTrial => {
    const zoneDays = zones
      .filter(({ zone }) => zoneIds.includes(zone.id))
      .flatMap(({ zone, days }) => days.map(({ date, mean }) => ({ zone: zone.code, date, meanC: mean })))
      .filter(({ date }) => date >= since);
    const hotReports = hot
      .filter((each) => zoneIds.includes(each.zoneId) && each.date >= since)
      .map(({ date }) => date);
    const until = zoneDays.reduce<LocalDate | null>((last, { date }) => (last && last >= date ? last : date), null);
    return { proposalId: id, since, until, rules: watchRules(rules, { hotReports, zoneDays }) };
  });
}

/** The day on which a trial began: when it was put in force, or before that when the trends show its first confirmed change. */
function beganOn(ctx: Context, { id: buildingId, timeZone }: BuildingRow, proposalId: number): LocalDate | null {
  const inForce = listProposalEvents(ctx.db, proposalId).find((each) => each.status === "in-force");
  const changes = listSetpointChanges(ctx.db, buildingId).filter(
    (each) => each.proposalId === proposalId && each.decision === "confirmed",
  );
  const starts = [...(inForce ? [inForce.enteredAtMs] : []), ...changes.map((each) => each.atUtcSeconds * 1000)];
  return starts.length > 0 ? localDateAt(Math.min(...starts), timeZone) : null;
}
