import { describe, expect, it } from "vitest";
import { previewPastReports, takePastReports } from "@/lib/services/comfort-reports/import-past";
import { readComfortReports } from "@/lib/services/comfort-reports/list";
import { logComfortReport } from "@/lib/services/comfort-reports/log";
import { smallOffice } from "@/test/factories/office";

const TABLE = `date,time,zone,desk,text
2024-07-01,10:15,2-14,,Freezing
2024-07-02,,,2-15-01,far too warm
2024-07-02,09:00,9-99,,cold
2024-07-03,09:00,2-14,,light flickers
2024-07-01,10:15,2-14,,Freezing
`;
const table = { file: TABLE, rule: {} };

describe("past complaints", () => {
  it("have a fate row by row, before anything is stored", () => {
    const { ctx, buildingId } = smallOffice();
    const read = previewPastReports(ctx, buildingId, table);
    const rows = read.status === "ok" ? read.rows : [];
    expect(rows.map(({ line, fate, reason }) => [line, fate, reason])).toEqual([
      [2, "accepted", ""],
      [3, "repaired", "no time: noon was taken"],
      [4, "rejected", "There is no zone 9-99 in this building."],
      [5, "ignored", "no word of the list: set what it is about, or leave it out"],
      [6, "ignored", "the same row stands above"],
    ]);
    expect(readComfortReports(ctx, buildingId)).toHaveLength(0);
  });

  it("come in at the building's time, once however often the file is taken", () => {
    const { ctx, buildingId } = smallOffice({ timeZone: "America/New_York" });
    takePastReports(ctx, buildingId, table);
    const again = takePastReports(ctx, buildingId, table);
    expect(again.status === "ok" && again.rows.filter(({ reason }) => reason === "it is here already")).toHaveLength(2);
    const reports = readComfortReports(ctx, buildingId);
    expect(
      reports.map(({ reportedAtMs, thermalSensation, zoneCode, state }) => [
        new Date(reportedAtMs).toISOString(),
        thermalSensation,
        zoneCode,
        state,
      ]),
    ).toEqual([
      ["2024-07-02T16:00:00.000Z", 2, "2-15", "closed"],
      ["2024-07-01T14:15:00.000Z", -2, "2-14", "closed"],
    ]);
  });
});

describe("a phone call", () => {
  it("is put on record with who took it, at the desk's zone", () => {
    const { ctx, buildingId } = smallOffice();
    const call = { origin: "phone", deskCode: "2-15-01", thermalSensation: -2, preference: "warmer" } as const;
    logComfortReport(ctx, buildingId, call);
    expect(readComfortReports(ctx, buildingId)[0]).toMatchObject({
      zoneCode: "2-15",
      deskCode: "2-15-01",
      origin: "phone",
      enteredBy: expect.stringMatching(/./),
      followToken: null,
    });
    expect(() => logComfortReport(ctx, buildingId, { ...call, zoneCode: "2-14" })).toThrow(/does not stand/);
    expect(() => logComfortReport(ctx, buildingId, { ...call, deskCode: "" })).toThrow(/which zone/);
    expect(() => logComfortReport(ctx, buildingId, { ...call, reportedAtMs: ctx.now + 60_000 })).toThrow(/ahead/);
  });
});
