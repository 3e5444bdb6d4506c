import { describe, expect, it } from "vitest";
import { listHeldReports } from "@/db/queries/held-reports";
import { REPORT_LIMITS } from "@/lib/comfort-reports/flood";
import { issueComfortLink } from "@/lib/services/comfort-links/manage";
import { fileComfortReport } from "@/lib/services/comfort-reports/file";
import { followReport } from "@/lib/services/comfort-reports/follow";
import { readComfortReports } from "@/lib/services/comfort-reports/list";
import { smallOffice } from "@/test/factories/office";

const COLD = { thermalSensation: -2, preference: "warmer" } as const;

function statuses(count: number, file: (i: number) => { status: string }): Record<string, number> {
  const tally: Record<string, number> = {};
  for (let i = 0; i < count; i++) {
    const { status } = file(i);
    tally[status] = (tally[status] ?? 0) + 1;
  }
  return tally;
}

describe("two hundred reports within a minute", () => {
  it("through one link: the first count, the next are kept aside, the rest are refused", () => {
    const { ctx, buildingId, zoneId } = smallOffice();
    const { token } = issueComfortLink(ctx, buildingId, { zoneId });
    const other = issueComfortLink(ctx, buildingId, { zoneId });
    const honest = fileComfortReport(ctx, token, { ...COLD, note: "first" });
    const tally = statuses(199, (i) => fileComfortReport({ ...ctx, now: ctx.now + i * 300 }, token, COLD));
    expect(tally).toEqual({ taken: 29, held: 30, refused: 140 });
    expect(honest.status).toBe("taken");
    expect(readComfortReports(ctx, buildingId)).toHaveLength(REPORT_LIMITS.link.taken);
    expect(listHeldReports(ctx.db, buildingId)).toHaveLength(30);
    expect(fileComfortReport(ctx, other.token, COLD).status).toBe("taken");
    expect(fileComfortReport({ ...ctx, now: ctx.now + 3_700_000 }, token, COLD).status).toBe("taken");
  });

  it("from one address over many links: an office behind one address has the wider limit", () => {
    const { ctx, buildingId, zoneId } = smallOffice();
    const links = Array.from({ length: 20 }, () => issueComfortLink(ctx, buildingId, { zoneId }));
    const tally = statuses(200, (i) => fileComfortReport(ctx, links[i % 20]?.token ?? "", COLD, i));
    expect(tally).toEqual({ taken: 120, held: 60, refused: 20 });
  });

  it("says at its private address that a report is kept aside, and counts it nowhere", () => {
    const { ctx, buildingId, zoneId } = smallOffice();
    const { token } = issueComfortLink(ctx, buildingId, { zoneId });
    statuses(30, () => fileComfortReport(ctx, token, COLD));
    const held = fileComfortReport(ctx, token, { ...COLD, submissionId: "again", language: "fr" });
    expect(fileComfortReport(ctx, token, { ...COLD, submissionId: "again" })).toEqual(held);
    const followToken = held.status === "held" ? (held.followToken ?? "") : "";
    expect(followReport(ctx, followToken)).toMatchObject({ state: "held", thermalSensation: -2, language: "fr" });
    expect(readComfortReports(ctx, buildingId)).toHaveLength(30);
  });
});
