import { renderToStaticMarkup } from "react-dom/server";
import { expect, it } from "vitest";
import { LowerMinimum } from "@/app/buildings/[buildingId]/zones/[zoneId]/_components/lower-minimum";
import {
  lastSaid,
  lowerMinimumWords,
  verdictNoteLines,
} from "@/app/buildings/[buildingId]/zones/[zoneId]/verdict-view-model";
import { causeLines, zoneLede } from "@/app/buildings/[buildingId]/zones/[zoneId]/view-model";
import { readBuilding } from "@/lib/services/buildings/find";
import { noteVerdict } from "@/lib/services/zone-verdicts/note";
import { readZoneVerdictRecord } from "@/lib/services/zone-verdicts/read";
import { readZonesOverview } from "@/lib/services/zones/overview";
import { reviseZone } from "@/lib/services/zones/save";
import { smallOffice } from "@/test/factories/office";
import { bringTrends } from "@/test/factories/office-records";

async function coldOffice() {
  const office = smallOffice();
  await bringTrends(office);
  const airflows = { designAirflowM3ps: 0.5, minimumAirflowM3ps: 0.12 };
  reviseZone(office.ctx, office.buildingId, office.zoneId, { code: "2-14", floorAreaM2: 120, ...airflows });
  const { ctx, buildingId, zoneId } = office;
  const overview = (await readZonesOverview(ctx, buildingId)).zones.find(({ zone }) => zone.id === zoneId);
  return { ...office, overview, building: readBuilding(ctx, buildingId) };
}

it("proposes the minimum airflow, says that the setpoint will not help, and names the evidence", async () => {
  const { overview, building } = await coldOffice();
  expect(zoneLede(overview, building)).toMatch(
    /^Verdict: minimum airflow too high \(.*\)\. Propose a lower minimum airflow first\. Raising the cooling setpoint would not warm the zone\.$/,
  );
  const [cause] = causeLines(overview, building);
  expect(cause?.evidence).toBe(
    "Hours and degree-hours by state; read from the trends of zone air temperature, airflow, reheat valve.",
  );
});

it("argues with the zone air to be reached, which opens into its working", async () => {
  const { ctx, buildingId, zoneId, building, overview } = await coldOffice();
  const { prediction } = await readZoneVerdictRecord(ctx, buildingId, zoneId, overview?.analysis ?? null);
  expect(lowerMinimumWords(prediction, "minimum-airflow-first", building)).toMatchObject({ figure: "73.4 °F" });
  const page = renderToStaticMarkup(
    <LowerMinimum
      prediction={prediction}
      verdict="minimum-airflow-first"
      building={building}
      buildingPath={`/buildings/${buildingId}`}
    />,
  );
  expect(page).toContain("With 127 cfm instead of 254 cfm the zone, now 70.7 °F");
  expect(page).toContain("show the working");
  expect(page).toContain("an engineer");
});

it("says why there is no argument, and nothing where no minimum airflow is proposed", async () => {
  const { building } = await coldOffice();
  expect(lowerMinimumWords(null, "healthy", building)).toBeNull();
  expect(lowerMinimumWords(null, "both-minimum-first", building)?.before).toContain("design airflow");
  for (const status of [
    "no-hours-at-minimum",
    "needs-discharge-air",
    "not-overcooled",
    "at-required-airflow",
  ] as const) {
    const words = lowerMinimumWords({ status }, "minimum-airflow-first", building);
    expect(words?.figure).toBeNull();
    expect(words?.before).toMatch(/cannot be shown: .*\.$/);
  }
});

it("shows what was said beside the verdict of its time, and what has changed since", async () => {
  const { ctx, buildingId, zoneId } = await coldOffice();
  await noteVerdict(ctx, buildingId, zoneId, { stance: "noted", note: "Damper looked at: it moves." });
  const airflows = { designAirflowM3ps: 0.5, minimumAirflowM3ps: 0.1 };
  reviseZone(ctx, buildingId, zoneId, { code: "2-14", floorAreaM2: 120, ...airflows });
  const { notes } = await readZoneVerdictRecord(ctx, buildingId, zoneId, null);
  const lines = verdictNoteLines(notes, "setpoint-first", "America/Chicago");
  expect(lastSaid(notes, "setpoint-first", "America/Chicago")).toMatch(
    /^Robin Vale noted something about the verdict "minimum airflow too high" on .*; since then the verdict is another now; the zone's data have changed\.$/,
  );
  expect(lastSaid([], "healthy", "UTC")).toContain("Nobody has looked");
  expect(lines).toMatchObject([
    {
      by: "Robin Vale",
      said: "noted",
      verdict: "minimum airflow too high",
      note: "Damper looked at: it moves.",
      since: "the verdict is another now; the zone's data have changed",
    },
  ]);
});
