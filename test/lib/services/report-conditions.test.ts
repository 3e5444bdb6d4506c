import { expect, it } from "vitest";
import { issueComfortLink } from "@/lib/services/comfort-links/manage";
import { airAtReports } from "@/lib/services/comfort-reports/air-at-reports";
import { readReportConditions } from "@/lib/services/comfort-reports/conditions";
import { fileComfortReport } from "@/lib/services/comfort-reports/file";
import { readComfortReports } from "@/lib/services/comfort-reports/list";
import { smallOffice } from "@/test/factories/office";
import { bringTrends } from "@/test/factories/office-records";

/** A report of "cool" at an hour of the made record. */
function reported(office: ReturnType<typeof smallOffice>, atMs: number, said: object = {}) {
  const { ctx, buildingId, zoneId } = office;
  const { token } = issueComfortLink(ctx, buildingId, { zoneId });
  fileComfortReport({ db: ctx.db, now: atMs }, token, { thermalSensation: -2, preference: "warmer", ...said });
  return readComfortReports(ctx, buildingId)[0]?.id ?? 0;
}

const NOON = Date.UTC(2025, 5, 10, 12, 7);

it("joins the trends to the moment of a report, with their age and the mean of the hour before", async () => {
  const office = smallOffice();
  await bringTrends(office);
  const found = await readReportConditions(office.ctx, office.buildingId, reported(office, NOON));
  expect(found.readings.map(({ kind, value, ageSeconds }) => [kind, value, ageSeconds])).toEqual([
    ["zone-air-temp", 21.5, 420],
    ["cooling-setpoint", 21.5, 420],
    ["airflow", 0.12, 420],
    ["reheat-valve", 0, 420],
    ["outdoor-air-temp", 27, 420],
  ]);
  expect(found.readings[0]?.hourMean).toBeCloseTo(21.5, 9);
  expect(found.control).toBe("near-cooling");
});

it("says where the vote lies beside what the method expects, by what the occupant wears and does", async () => {
  const office = smallOffice();
  await bringTrends(office);
  const id = reported(office, NOON, { clothing: "jacket-trousers", activity: "typing" });
  const { felt } = await readReportConditions(office.ctx, office.buildingId, id);
  expect(felt?.beside).toBe("colder");
  expect(felt?.inputs.map(({ what, origin }) => [what, origin])).toContainEqual(["Clothing with chair", "reported"]);
  const light = await readReportConditions(office.ctx, office.buildingId, reported(office, NOON + 60_000));
  expect(light.felt?.beside).toBe("within");
  expect(light.felt?.inputs.map(({ what, origin }) => [what, origin])).toContainEqual([
    "Clothing with chair",
    "assumed",
  ]);
});

it("waits for trends that come in later", async () => {
  const office = smallOffice();
  const id = reported(office, NOON);
  const before = await readReportConditions(office.ctx, office.buildingId, id);
  expect(before).toMatchObject({ readings: [], control: "unknown", felt: null });
  await bringTrends(office);
  expect((await readReportConditions(office.ctx, office.buildingId, id)).felt).not.toBeNull();
});

it("knows no air of a report in a zone without a trend, beside one that has it", async () => {
  const office = smallOffice();
  await bringTrends(office);
  const reports = [office.otherZoneId, office.zoneId].map((zoneId) => ({ zoneId, reportedAtMs: NOON }));
  const air = await airAtReports(office.ctx, office.buildingId, reports, 12);
  expect(air.map(({ zoneAirTempC }) => zoneAirTempC)).toEqual([null, 21.5]);
});

it("takes no reading older than half an hour for what was, and a setpoint for a week", async () => {
  const office = smallOffice();
  await bringTrends(office);
  const end = Date.UTC(2025, 5, 2) + 4 * 7 * 86_400_000;
  const { readings } = await readReportConditions(office.ctx, office.buildingId, reported(office, end + 3 * 3_600_000));
  expect(readings.map(({ kind }) => kind)).toEqual(["cooling-setpoint"]);
});

it("refuses a report of another building", async () => {
  const office = smallOffice();
  await expect(readReportConditions(office.ctx, office.buildingId, 99)).rejects.toThrow("does not exist");
});
