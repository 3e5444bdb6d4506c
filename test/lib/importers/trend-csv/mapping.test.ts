import { describe, expect, test } from "vitest";
import { equipmentKey } from "@/lib/importers/trend-csv/equipment-key";
import { proposeMapping } from "@/lib/importers/trend-csv/propose-mapping";
import type { KnownZone } from "@/lib/importers/trend-csv/propose-zone";
import { proposedZoneCodes } from "@/lib/importers/trend-csv/proposed-zones";

const zones: KnownZone[] = [
  { id: 1, code: "VAV-1", name: "North open plan" },
  { id: 10, code: "VAV-10", name: "Corner office" },
  { id: 214, code: "VAV-2-14", name: "Meeting rooms" },
  { id: 2, code: "VAV-2", name: "Lobby" },
  { id: 7, code: "2-01", name: "Zone 2-01" },
];

// Names of the real one-file-a-point exports and of the made-up shapes; what each is, by its data set's README.
const expected: [name: string, kind: string | null, zoneId: number | null][] = [
  ["VAV-1_ZN-T", "zone-air-temp", 1],
  ["VAV-10_ZN-T", "zone-air-temp", 10],
  ["VAV-10-0CC-O", "occupancy", 10],
  ["VAV-2_OCC-C", "occupancy", 2],
  ["VAV-1_ACTCLGSP", "cooling-setpoint", 1],
  ["VAV-10-ACTHTGSP", "heating-setpoint", 10],
  ["VAV-10-SUPFLOW", "airflow", 10],
  ["VAV-1_SUPFLOSP", "airflow-setpoint", 1],
  ["VAV-1_DPR-O", "damper-position", 1],
  ["VAV-1_HTG-O", "reheat-valve", 1],
  ["VAV-1_RAD-O", null, null],
  ["VAV-1_DA-T", "discharge-air-temp", 1],
  ["S-7_DA-T", "supply-air-temp", null],
  ["S-7_OA-T", "outdoor-air-temp", null],
  ["S-7_RA-T", null, null],
  ["S-7_MA-T", null, null],
  ["S-7_DAT-SP", null, null],
  ["S-7_CLGUNOOC-SP", null, null],
  ["S-7_MINPOS-SP", null, null],
  ["S-7_SF-C", null, null],
  ["RTU_11_AVGZN_T", "zone-air-temp", null],
  ["RTU_11_MAD_O", null, null],
  ["VAV-2-14 ZN-T", "zone-air-temp", 214],
  ["VAV_214 ZN-T", "zone-air-temp", 214],
  ["North wing / VAV-2-14 / ZN-T", "zone-air-temp", 214],
  ["North wing / VAV-2-14 / Damper", "damper-position", 214],
  ["Zone 2-01 Temp", "zone-air-temp", 7],
  ["Zone 2-01 Clg SP", "cooling-setpoint", 7],
  ["FL2_ZN03_SpaceTemp", "zone-air-temp", null],
  ["FL2_ZN03_EffCoolSP", "cooling-setpoint", null],
  ["FL2_ZN03_SpaceRH", null, null],
  ["B1.L3.Z7.ZoneTemp", "zone-air-temp", null],
  ["B1.L3.Z7.CoolSetpt", "cooling-setpoint", null],
  ["SpaceTemp", "zone-air-temp", null],
  ["ActClgStpt", "cooling-setpoint", null],
  ["OutdoorAirTemperature", "outdoor-air-temp", null],
  ["SupplyAirTempStPt", null, null],
  ["ZoneDamperCommand1152", "damper-position", null],
  ["ZoneReheat1152", "reheat-valve", null],
  ["HotWaterSupplyTemperature", null, null],
  ["FLOW-SP VAV-1", "airflow-setpoint", 1],
];

describe("what a point is, by its name", () => {
  test.each(expected)("%s is %s in zone %s", (name, kind, zoneId) => {
    expect(proposeMapping(name, zones)).toMatchObject({ kind, zoneId });
  });

  test("a bare Temp is left to a person, not left out", () => {
    expect(proposeMapping("Temp", zones)).toMatchObject({ kind: null, skip: false, confidence: "low", zoneId: null });
    expect(proposeMapping("VAV-1_RAD-O", zones)).toMatchObject({ kind: null, skip: true });
  });

  test("one setpoint for both is proposed with low confidence only", () => {
    expect(proposeMapping("VAV-2-14 ZN-SP", zones)).toMatchObject({
      kind: "cooling-setpoint",
      confidence: "low",
      zoneId: 214,
    });
  });

  test("2-14 and 21-4 cannot be told apart once the dashes are gone", () => {
    const both = [...zones, { id: 99, code: "VAV-21-4", name: "Store" }];
    expect(proposeMapping("VAV_214 ZN-T", both)).toMatchObject({ zoneId: null });
    expect(proposeMapping("VAV-21-4 ZN-T", both)).toMatchObject({ zoneId: 99 });
  });

  test("spellings of one box share a key", () => {
    for (const name of ["VAV-2-14_ZN-T", "VAV2_14 ACTCLGSP", "VAV_214 DPR-O"])
      expect(equipmentKey(name)).toBe("vav214");
  });
});

test("zones are proposed once each, with their points, and none for air handlers", () => {
  const names = [
    "VAV-1_ZN-T",
    "VAV-10-0CC-O",
    "VAV-1_ACTCLGSP",
    "VAV-10_ZN-T",
    "S-7_OA-T",
    "S-7_DA-T",
    "Temp",
    "VAV-1_RAD-O",
  ];
  expect(proposedZoneCodes(names)).toEqual([
    { code: "VAV-1", points: ["VAV-1_ZN-T", "VAV-1_ACTCLGSP"] },
    { code: "VAV-10", points: ["VAV-10-0CC-O", "VAV-10_ZN-T"] },
  ]);
});
