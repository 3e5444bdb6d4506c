import { describe, expect, it } from "vitest";
import { createBuilding } from "@/lib/services/buildings/save";
import { endComfortLink, issueComfortLink, readComfortLinks } from "@/lib/services/comfort-links/manage";
import { fileComfortReport, openComfortForm } from "@/lib/services/comfort-reports/file";
import { readComfortReports } from "@/lib/services/comfort-reports/list";
import { addDesk } from "@/lib/services/desks/save";
import { addZone } from "@/lib/services/zones/save";
import { buildingInputOf } from "@/test/factories/building";
import { testContext } from "@/test/support/database";

function buildingWithDesk() {
  const ctx = testContext();
  const buildingId = createBuilding(ctx, buildingInputOf());
  const zoneId = addZone(ctx, buildingId, { code: "2-14" });
  const deskId = addDesk(ctx, buildingId, { code: "2-14-03", zoneCode: "2-14" });
  return { ctx, buildingId, zoneId, deskId };
}

describe("filing a comfort report through a link", () => {
  it("needs no account and lands at the link's desk", () => {
    const { ctx, buildingId, zoneId, deskId } = buildingWithDesk();
    const { token } = issueComfortLink(ctx, buildingId, { zoneId, deskId });
    fileComfortReport({ db: ctx.db, now: ctx.now }, token, { thermalSensation: -2, preference: "warmer" });
    const [report] = readComfortReports(ctx, buildingId);
    expect(report).toMatchObject({ zoneCode: "2-14", deskCode: "2-14-03", thermalSensation: -2, preference: "warmer" });
  });

  it("counts a submission that is sent twice once", () => {
    const { ctx, buildingId, zoneId } = buildingWithDesk();
    const { token } = issueComfortLink(ctx, buildingId, { zoneId });
    const report = { thermalSensation: 1, preference: "cooler", submissionId: "abc" } as const;
    fileComfortReport(ctx, token, report);
    fileComfortReport(ctx, token, report);
    expect(readComfortReports(ctx, buildingId)).toHaveLength(1);
  });

  it("refuses a vote outside the seven points", () => {
    const { ctx, buildingId, zoneId } = buildingWithDesk();
    const { token } = issueComfortLink(ctx, buildingId, { zoneId });
    expect(() => fileComfortReport(ctx, token, { thermalSensation: -4, preference: "warmer" })).toThrow(/scale/);
  });

  it("is refused once the link has ended, and earlier reports stay", () => {
    const { ctx, buildingId, zoneId } = buildingWithDesk();
    const { token } = issueComfortLink(ctx, buildingId, { zoneId });
    fileComfortReport(ctx, token, { thermalSensation: -1, preference: "warmer" });
    const [link] = readComfortLinks(ctx, buildingId);
    endComfortLink(ctx, buildingId, link?.id ?? 0);
    expect(openComfortForm(ctx, token)).toEqual({ open: false });
    expect(fileComfortReport(ctx, token, { thermalSensation: -1, preference: "warmer" })).toEqual({
      status: "link-ended",
    });
    expect(readComfortReports(ctx, buildingId)).toHaveLength(1);
  });
});

describe("what an occupant may add", () => {
  it("is kept with the report", () => {
    const { ctx, buildingId, zoneId } = buildingWithDesk();
    const { token } = issueComfortLink(ctx, buildingId, { zoneId });
    fileComfortReport(ctx, token, {
      thermalSensation: -2,
      preference: "warmer",
      sinceWhen: "days",
      bodyParts: ["feet", "neck"],
      sun: false,
      dryAir: true,
      replyAddress: " someone@example.com ",
      language: "es",
    });
    expect(readComfortReports(ctx, buildingId)[0]).toMatchObject({
      sinceWhen: "days",
      bodyParts: "feet,neck",
      sun: false,
      dryAir: true,
      replyAddress: "someone@example.com",
      language: "es",
      origin: "link",
      state: "received",
    });
  });

  it.each([
    "someone",
    "a b@example.com",
    "someone@",
    "@example.com",
    "someone@example",
    "x@example.com, y@example.com",
  ])("refuses %s as a mail address and names the field", (replyAddress) => {
    const { ctx, buildingId, zoneId } = buildingWithDesk();
    const { token } = issueComfortLink(ctx, buildingId, { zoneId });
    const file = () => fileComfortReport(ctx, token, { thermalSensation: 0, preference: "no-change", replyAddress });
    expect(file).toThrow(/mail address/);
    expect(readComfortReports(ctx, buildingId)).toHaveLength(0);
  });
});

describe("desks", () => {
  it("refuses a zone that does not exist and names it", () => {
    const { ctx, buildingId } = buildingWithDesk();
    expect(() => addDesk(ctx, buildingId, { code: "X", zoneCode: "9-99" })).toThrow(/There is no zone 9-99/);
  });
});
