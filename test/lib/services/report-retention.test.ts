import { expect, it } from "vitest";
import { readInputMarks } from "@/db/queries/input-marks";
import { countPersonDays } from "@/lib/comfort-reports/person-days";
import { issueComfortLink } from "@/lib/services/comfort-links/manage";
import { fileComfortReport } from "@/lib/services/comfort-reports/file";
import { readInbox } from "@/lib/services/comfort-reports/inbox";
import { readComfortReports } from "@/lib/services/comfort-reports/list";
import {
  changeReportRetention,
  deleteOldReportDetails,
  readReportRetention,
} from "@/lib/services/comfort-reports/retention";
import { takeReportStep } from "@/lib/services/comfort-reports/take-step";
import { smallOffice } from "@/test/factories/office";

const DAY_MS = 86_400_000;

function officeWithReport() {
  const office = smallOffice();
  const { ctx, buildingId, zoneId } = office;
  const { token } = issueComfortLink(ctx, buildingId, { zoneId });
  fileComfortReport(ctx, token, {
    thermalSensation: -2,
    preference: "warmer",
    note: "cold feet",
    replyAddress: "someone@example.com",
  });
  const only = () => readComfortReports(ctx, buildingId)[0];
  return { ...office, only, after: (days: number) => ({ ...ctx, now: ctx.now + days * DAY_MS }) };
}

it("deletes the address some days after closing, the note after a year, and keeps the vote", () => {
  const { ctx, buildingId, only, after } = officeWithReport();
  takeReportStep(after(10), buildingId, only()?.id ?? 0, { state: "closed" });
  const marks = readInputMarks(ctx.db, buildingId);
  deleteOldReportDetails(after(99));
  expect(only()).toMatchObject({ replyAddress: "someone@example.com", note: "cold feet" });
  expect(deleteOldReportDetails(after(101))).toEqual({ addresses: 1, notes: 0, desks: 0 });
  expect(only()).toMatchObject({ replyAddress: null, note: "cold feet" });
  expect(deleteOldReportDetails(after(366))).toEqual({ addresses: 0, notes: 1, desks: 0 });
  expect(only()).toMatchObject({ note: "", thermalSensation: -2, preference: "warmer" });
  expect(readInputMarks(ctx.db, buildingId)).toEqual(marks);
});

it("deletes the address of a report that nobody closes with its note", () => {
  const { only, after } = officeWithReport();
  deleteOldReportDetails(after(364));
  expect(only()?.replyAddress).toBe("someone@example.com");
  deleteOldReportDetails(after(366));
  expect(only()).toMatchObject({ replyAddress: null, note: "" });
});

it("keeps a building's own days, deletes at once what is past them, and refuses others by field", () => {
  const { ctx, buildingId, only, after } = officeWithReport();
  expect(readReportRetention(ctx, buildingId)).toEqual({ replyAddressDays: 90, noteDays: 365, deskDays: 365 });
  const wrong = { replyAddressDays: 400, noteDays: 0, deskDays: 0 };
  expect(() => changeReportRetention(ctx, buildingId, wrong)).toThrow(/3 fields/);
  changeReportRetention(after(31), buildingId, { replyAddressDays: 7, noteDays: 30, deskDays: 30 });
  expect(only()).toMatchObject({ replyAddress: null, note: "" });
});

it("deletes the desk of a whole day after a year, with the link that tells it, and keeps repeats one person's day", () => {
  const { ctx, buildingId, zoneId, deskId, after } = officeWithReport();
  const ofDesk = issueComfortLink(ctx, buildingId, { zoneId, deskId }).token;
  const ofZone = issueComfortLink(ctx, buildingId, { zoneId }).token;
  const cold = { thermalSensation: -2, preference: "warmer" } as const;
  for (const token of [ofDesk, ofDesk, ofZone]) fileComfortReport(ctx, token, cold);
  fileComfortReport(after(1), ofDesk, cold);
  const reports = () => readComfortReports(ctx, buildingId).toReversed().slice(1);
  const days = () => countPersonDays(reports(), () => 0);
  const marks = readInputMarks(ctx.db, buildingId);
  expect(days()).toBe(3);
  expect(deleteOldReportDetails(after(364)).desks).toBe(0);
  expect(deleteOldReportDetails(after(366)).desks).toBe(2);
  expect(days()).toBe(3);
  expect(reports().map(({ deskCode }) => deskCode)).toEqual([null, null, null, "2-14-01"]);
  expect(reports().map(({ linkId }) => linkId !== null)).toEqual([false, false, true, true]);
  expect(deleteOldReportDetails(after(366)).desks).toBe(0);
  expect(deleteOldReportDetails(after(367)).desks).toBe(1);
  expect(days()).toBe(3);
  expect(readInputMarks(ctx.db, buildingId)).toEqual(marks);
});

it("takes reports of deleted desks for no sign that the whole zone is cold", () => {
  const { ctx, buildingId, zoneId, deskId, after } = officeWithReport();
  const { token } = issueComfortLink(ctx, buildingId, { zoneId, deskId });
  for (const days of [1, 2, 3, 4])
    fileComfortReport(after(days), token, { thermalSensation: -2, preference: "warmer" });
  const reach = () => readInbox(after(400), buildingId).zones[0]?.reach;
  takeReportStep(ctx, buildingId, readComfortReports(ctx, buildingId).at(-1)?.id ?? 0, { state: "closed" });
  expect(reach()).toBe("one-desk");
  expect(deleteOldReportDetails(after(400)).desks).toBe(4);
  expect(reach()).toBe("one-desk");
});
