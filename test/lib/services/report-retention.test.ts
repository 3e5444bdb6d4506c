import { expect, it } from "vitest";
import { readInputMarks } from "@/db/queries/input-marks";
import { issueComfortLink } from "@/lib/services/comfort-links/manage";
import { fileComfortReport } from "@/lib/services/comfort-reports/file";
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
  expect(deleteOldReportDetails(after(101))).toEqual({ addresses: 1, notes: 0 });
  expect(only()).toMatchObject({ replyAddress: null, note: "cold feet" });
  expect(deleteOldReportDetails(after(366))).toEqual({ addresses: 0, notes: 1 });
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
  expect(readReportRetention(ctx, buildingId)).toEqual({ replyAddressDays: 90, noteDays: 365 });
  expect(() => changeReportRetention(ctx, buildingId, { replyAddressDays: 400, noteDays: 0 })).toThrow(/2 fields/);
  changeReportRetention(after(31), buildingId, { replyAddressDays: 7, noteDays: 30 });
  expect(only()).toMatchObject({ replyAddress: null, note: "" });
});
