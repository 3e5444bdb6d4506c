import { expect, it } from "vitest";
import { insertComfortReport } from "@/db/queries/comfort";
import { readKept } from "@/lib/services/kept/read-kept";
import { decideChange } from "@/lib/services/proposals/changes";
import { decideProposal } from "@/lib/services/proposals/decide";
import { draftProposal } from "@/lib/services/proposals/save";
import { WATCHED_TRIALS } from "@/lib/services/proposals/watch";
import { proposalInputOf } from "@/test/factories/proposal";
import { season } from "@/test/factories/season";

/** An office whose setpoint, and with it the air, goes from 21.5 °C to 25.7 °C after four weeks: above the limit of 25.5 °C. */
const tooWarm = () =>
  season({
    setpoints: [
      [0, 21.5],
      [28, 25.7],
    ],
    days: 56,
  });

it("watches a trial from its first confirmed change on, and only while it is in force or held", async () => {
  const office = await tooWarm();
  const { ctx, buildingId, zoneId } = office;
  const id = draftProposal(ctx, buildingId, proposalInputOf(zoneId));
  const trialNow = async () => (await readKept(ctx, buildingId, WATCHED_TRIALS)).result?.trials ?? [];
  for (const status of ["submitted", "approved"] as const) await decideProposal(ctx, buildingId, id, { status });
  expect(await trialNow()).toEqual([]);
  await decideProposal(ctx, buildingId, id, { status: "in-force" });
  const [move] = await office.moves();
  if (!move) throw new Error("no move was found");
  await decideChange(ctx, buildingId, {
    zoneId,
    setting: move.setting,
    atUtcSeconds: move.atUtcSeconds,
    decision: "confirmed",
    proposalId: id,
    changedBy: "Controls desk",
    reason: "Trial",
  });
  const [trial] = await trialNow();
  expect(trial).toMatchObject({ proposalId: id, since: "2025-06-02", until: "2025-06-27" });
  const air = trial?.rules.find((each) => each.rule === "zone-air");
  expect(air?.broken?.on.startsWith("2025-06")).toBe(true);
  expect(air?.broken?.zone).toBe("2-14");
  expect(trial?.rules.find((each) => each.rule === "hot-reports")).toMatchObject({ broken: null, highest: null });

  for (const hour of [13, 15, 17]) {
    const at = Date.UTC(2025, 5, 12, hour);
    const vote = { thermalSensation: 3, preference: "cooler" as const };
    const own = { buildingId, zoneId, deskId: null, reportedAtMs: at, submissionId: `hot-${hour}` };
    insertComfortReport(ctx.db, { ...vote, ...own, origin: "phone", enteredBy: "test" });
  }
  const [hot] = await trialNow();
  expect(hot?.rules.find((each) => each.rule === "hot-reports")?.broken).toMatchObject({ figure: 3, on: "2025-06-12" });

  await decideProposal(ctx, buildingId, id, { status: "held", comment: "Too warm." });
  expect(await trialNow()).toHaveLength(1);
  await decideProposal(ctx, buildingId, id, { status: "rolled-back", comment: "Too warm." });
  expect(await trialNow()).toEqual([]);
});
