import { describe, expect, it } from "vitest";
import { issueComfortLink } from "@/lib/services/comfort-links/manage";
import { fileComfortReport } from "@/lib/services/comfort-reports/file";
import { followReport } from "@/lib/services/comfort-reports/follow";
import { decideHeldReport, readHeldReports } from "@/lib/services/comfort-reports/held";
import { INBOX_PAGE, readInbox } from "@/lib/services/comfort-reports/inbox";
import { readComfortReports } from "@/lib/services/comfort-reports/list";
import { logComfortReport } from "@/lib/services/comfort-reports/log";
import { readReportSteps, takeReportStep } from "@/lib/services/comfort-reports/take-step";
import { addDesk } from "@/lib/services/desks/save";
import { smallOffice } from "@/test/factories/office";

const HOUR_MS = 3_600_000;
const COLD = { thermalSensation: -2, preference: "warmer" } as const;
const HOT = { thermalSensation: 2, preference: "cooler" } as const;

function officeWithReport() {
  const office = smallOffice();
  const { ctx, buildingId, zoneId, deskId } = office;
  const { token } = issueComfortLink(ctx, buildingId, { zoneId, deskId });
  const filed = fileComfortReport(ctx, token, COLD);
  const followToken = filed.status === "taken" ? (filed.followToken ?? "") : "";
  return { ...office, token, followToken, reportId: readComfortReports(ctx, buildingId)[0]?.id ?? 0 };
}

describe("steps with a report", () => {
  it("stand with who and when, and the occupant reads states and answers, not notes and names", () => {
    const { ctx, buildingId, reportId, followToken } = officeWithReport();
    const at = (hours: number) => ({ ...ctx, now: ctx.now + hours * HOUR_MS });
    takeReportStep(at(1), buildingId, reportId, { state: "looking" });
    takeReportStep(at(5), buildingId, reportId, {
      action: "setpoint",
      note: "Cooling setpoint 21.5 to 23.0 °C",
      answer: "Your zone is now cooled less.",
    });
    takeReportStep(at(9), buildingId, reportId, { state: "closed" });
    const steps = readReportSteps(ctx, buildingId, reportId);
    expect(steps.map(({ state, action, atMs }) => [state, action, (atMs - ctx.now) / HOUR_MS])).toEqual([
      ["looking", null, 1],
      ["answered", "setpoint", 5],
      ["closed", null, 9],
    ]);
    expect(steps[0]?.by).toMatch(/./);
    const followed = followReport(ctx, followToken);
    expect(followed).toMatchObject({ state: "closed", steps: [{}, { answer: "Your zone is now cooled less." }, {}] });
    expect(JSON.stringify(followed)).not.toContain("21.5");
    expect(JSON.stringify(followed)).not.toContain(String(steps[0]?.by));
    expect(readInbox(at(10), buildingId).response).toMatchObject({ reports: 1, answered: 1, medianMs: null });
    expect(readInbox(at(10), buildingId).count).toBe(0);
  });

  it("tell how long answers usually take once five people were answered", () => {
    const { ctx, buildingId, reportId } = officeWithReport();
    const later = { ...ctx, now: ctx.now + 5 * HOUR_MS };
    const answer = { answer: "Your zone is now cooled less." };
    for (const n of [2, 3, 4, 5]) {
      expect(readInbox(later, buildingId).response.medianMs).toBeNull();
      const deskCode = `2-14-0${n}`;
      addDesk(ctx, buildingId, { code: deskCode, zoneCode: "2-14" });
      takeReportStep(
        later,
        buildingId,
        logComfortReport(ctx, buildingId, { ...COLD, origin: "phone", deskCode }),
        answer,
      );
    }
    takeReportStep(later, buildingId, reportId, answer);
    expect(readInbox(later, buildingId).response).toMatchObject({ answered: 5, medianMs: 5 * HOUR_MS });
  });

  it("are refused where they do not follow, or say nothing", () => {
    const { ctx, buildingId, reportId } = officeWithReport();
    const take = (step: Parameters<typeof takeReportStep>[3]) => () => takeReportStep(ctx, buildingId, reportId, step);
    expect(take({ state: "reopened" })).toThrow(/cannot be reopened next/);
    expect(take({ state: "answered" })).toThrow(/occupant is to read/);
    expect(take({ action: "not-changed" })).toThrow(/why nothing/);
    expect(take({ action: "airflow" })).toThrow(/from what to what/);
    expect(take({ action: "airflow", note: "x", actedAtMs: ctx.now + 1 })).toThrow(/ahead/);
    expect(take({})).toThrow(/Nothing was entered/);
    expect(readReportSteps(ctx, buildingId, reportId)).toEqual([]);
  });

  it("open a closed report again", () => {
    const { ctx, buildingId, reportId } = officeWithReport();
    takeReportStep(ctx, buildingId, reportId, { state: "closed" });
    expect(() => takeReportStep(ctx, buildingId, reportId, { state: "looking" })).toThrow(/reopened/);
    takeReportStep(ctx, buildingId, reportId, { state: "reopened" });
    expect(readInbox(ctx, buildingId).reports[0]).toMatchObject({ state: "reopened", closedAtMs: null });
  });
});

describe("the inbox", () => {
  it("sums open reports up by zone: repeats of a desk on a day are one person-day, two desks are the zone", () => {
    const { ctx, buildingId, token, zoneId, otherZoneId } = officeWithReport();
    fileComfortReport({ ...ctx, now: ctx.now + 1000 }, token, COLD);
    expect(readInbox(ctx, buildingId).zones).toMatchObject([
      { zoneId, reports: 2, personDays: 1, cold: 2, hot: 0, reach: "one-desk", oldestAtMs: ctx.now, devices: 0 },
    ]);
    logComfortReport(ctx, buildingId, { ...COLD, origin: "phone", zoneCode: "2-14" });
    logComfortReport(ctx, buildingId, { ...HOT, origin: "mail", zoneCode: "2-15" });
    const { zones } = readInbox(ctx, buildingId);
    expect(zones.map(({ zoneId: id, personDays, cold, hot, reach }) => [id, personDays, cold, hot, reach])).toEqual([
      [zoneId, 2, 3, 0, "zone-wide"],
      [otherZoneId, 1, 0, 1, "one-desk"],
    ]);
  });

  it("is paged, and shows one zone or one state alone", () => {
    const { ctx, buildingId, otherZoneId } = officeWithReport();
    for (let i = 0; i < INBOX_PAGE + 4; i++)
      logComfortReport(ctx, buildingId, { ...HOT, origin: "phone", zoneCode: "2-15", reportedAtMs: ctx.now - i });
    const second = readInbox(ctx, buildingId, { page: 2 });
    expect([second.count, second.pages, second.reports.length]).toEqual([INBOX_PAGE + 5, 2, 5]);
    expect(readInbox(ctx, buildingId, { zoneId: otherZoneId }).count).toBe(INBOX_PAGE + 4);
    expect(readInbox(ctx, buildingId, { view: "closed" }).count).toBe(0);
    expect(readInbox(ctx, buildingId, { page: 99 }).page).toBe(2);
  });
});

describe("a report kept aside", () => {
  it("counts once it is taken in, from when it was sent, under its own address; a dropped one is gone", () => {
    const { ctx, buildingId, token } = officeWithReport();
    for (let i = 0; i < 29; i++) fileComfortReport(ctx, token, COLD);
    const held = fileComfortReport(ctx, token, { ...COLD, note: "honest", bodyParts: ["feet"] });
    fileComfortReport(ctx, token, HOT);
    const [dropped, kept] = readHeldReports(ctx, buildingId);
    expect(kept).toMatchObject({ zoneCode: "2-14", deskCode: "2-14-01", sent: { note: "honest" } });
    const later = { ...ctx, now: ctx.now + HOUR_MS };
    decideHeldReport(later, buildingId, kept?.id ?? 0, "take");
    decideHeldReport(later, buildingId, dropped?.id ?? 0, "drop");
    expect(readHeldReports(ctx, buildingId)).toEqual([]);
    expect(readComfortReports(ctx, buildingId)[0]).toMatchObject({
      note: "honest",
      bodyParts: "feet",
      reportedAtMs: ctx.now,
    });
    expect(followReport(ctx, held.status === "held" ? (held.followToken ?? "") : "").state).toBe("received");
    expect(() => decideHeldReport(ctx, buildingId, kept?.id ?? 0, "take")).toThrow(/no longer/);
  });
});
