import { describe, expect, it } from "vitest";
import { type DeviceTableBuilding, readDevicesTable } from "@/lib/importers/tables/read-devices";
import { acceptedTable, fatesOf, refusedTable, textBytes } from "./table-support";

const building: DeviceTableBuilding = {
  zoneCodes: ["2-14", "2-15"],
  desks: [{ code: "2-14-01", zoneCode: "2-14" }],
  classes: [
    { id: "fan-heater-1500", label: "Fan heater, 1500 W", kind: "space-heater" },
    { id: "desk-fan", label: "Desk fan", kind: "personal-fan" },
  ],
};
const HEADING =
  "device,kind,class,zone,desk,setting,basis,current_A,resolution_A,voltage_V,power_factor,power_W,hours_per_year,duty";
const read = (rows: readonly string[], extra: Partial<DeviceTableBuilding> = {}) =>
  readDevicesTable({ bytes: textBytes([HEADING, ...rows].join("\n")) }, { ...building, ...extra });

describe("devices", () => {
  it("gather their settings over rows; later rows may leave the description blank", () => {
    const table = acceptedTable(
      read([
        "H-001,heater,fan-heater-1500,2-14,2-14-01,Low heat,clamp,6.2,0.1,119.5,1,,300,0.8",
        "F-001,fan,Desk fan,2-15,,on,plug meter,,,,,23.4,800,",
        "H-001,,,,,high heat,plug-meter,,,,,1432,150,60%",
      ]),
    );
    expect(table.rows).toEqual([
      {
        line: 2,
        row: {
          label: "H-001",
          kind: "space-heater",
          deviceClass: "fan-heater-1500",
          zoneCode: "2-14",
          deskCode: "2-14-01",
          settings: [
            {
              name: "low-heat",
              basis: "clamp",
              currentA: 6.2,
              currentResolutionA: 0.1,
              voltageV: 119.5,
              powerFactor: 1,
              powerW: null,
              hoursPerYear: 300,
              dutyFraction: 0.8,
            },
            expect.objectContaining({ name: "high-heat", basis: "plug-meter", powerW: 1432, dutyFraction: 0.6 }),
          ],
        },
      },
      {
        line: 3,
        row: expect.objectContaining({ label: "F-001", kind: "personal-fan", deviceClass: "desk-fan", deskCode: null }),
      },
    ]);
    expect(fatesOf(table)).toEqual([
      [2, "accepted", ""],
      [3, "accepted", ""],
      [4, "repaired", "percent"],
    ]);
  });

  it("are taken whole or not at all", () => {
    const table = acceptedTable(
      read([
        "H-001,heater,fan-heater-1500,2-14,,low-heat,clamp,6.2,,,,,,",
        "H-001,,,,,high-heat,clamp,,,,,,,",
        "H-002,heater,fan-heater-1500,9-99,,low-heat,clamp,6.2,,,,,,",
        "H-002,,,,,high-heat,clamp,12,,,,,,",
      ]),
    );
    expect(table.rows).toEqual([]);
    expect(fatesOf(table)).toEqual([
      [2, "held-back", "device-incomplete"],
      [3, "rejected", "reading-blank"],
      [4, "rejected", "zone-unknown"],
      [5, "held-back", "device-incomplete"],
    ]);
    const [first] = table.fates;
    expect(first && "message" in first && first.message).toContain("line 3 of the same device was rejected");
  });

  it.each([
    [
      "an unknown class",
      "H,heater,toaster,2-14,,on,nameplate,,,,,900,,",
      "class-unknown",
      "known are fan-heater-1500.",
    ],
    [
      "a class of the other kind",
      "H,fan,fan-heater-1500,2-14,,on,nameplate,,,,,900,,",
      "class-of-other-kind",
      "space-heater",
    ],
    ["an unknown kind", "H,lamp,desk-fan,2-14,,on,nameplate,,,,,900,,", "kind-unknown", "personal-fan"],
    ["an unknown basis", "H,,desk-fan,2-14,,on,guess,,,,,900,,", "basis-unknown", '"guess" is not known'],
    ["no setting", "H,,desk-fan,2-14,,,nameplate,,,,,900,,", "setting-blank", "setting has no name"],
    ["no place", "H,,desk-fan,,,on,nameplate,,,,,900,,", "zone-blank", "neither a zone nor a desk"],
    ["a desk of another zone", "H,,desk-fan,2-15,2-14-01,on,nameplate,,,,,90,,", "desk-in-other-zone", "zone 2-14"],
    ["an unknown desk", "H,,desk-fan,2-15,7,on,nameplate,,,,,90,,", "desk-unknown", "desk 7 does not exist"],
    ["a current beyond any plug", "H,,desk-fan,2-15,,on,clamp,150,,,,,,", "outside-limits", "0 to 100 A"],
    ["a power factor above one", "H,,desk-fan,2-15,,on,clamp,1,,,1.2,,,", "outside-limits", "above 0 to 1"],
    ["a duty in percent", "H,,desk-fan,2-15,,on,clamp,1,,,,,,60", "outside-limits", "write 60 % as 0.6"],
    ["more hours than a year", "H,,desk-fan,2-15,,on,clamp,1,,,,,8800,", "outside-limits", "8784 h a year"],
    ["a reading beside class-default", "H,,desk-fan,2-15,,on,default,,,,,30,,", "reading-not-used", "takes no reading"],
    ["no device", ",,desk-fan,2-15,,on,default,,,,,,,", "device-blank", "which device"],
  ])("are rejected for %s", (_, row, code, words) => {
    const table = acceptedTable(read([row]));
    expect(table.rows).toEqual([]);
    expect(table.fates).toMatchObject([{ line: 2, fate: "rejected", code }]);
    const [fate] = table.fates;
    expect(fate && "message" in fate && fate.message).toContain(words);
  });

  it("take their zone from the desk when the zone is blank", () => {
    const table = acceptedTable(read(["F,,desk-fan,,2-14-01,on,nameplate,,,,,40,,"]));
    expect(table.rows[0]?.row).toMatchObject({ zoneCode: "2-14", deskCode: "2-14-01" });
  });

  it("may not change their place or repeat a setting from row to row", () => {
    const table = acceptedTable(
      read([
        "H,,fan-heater-1500,2-14,,low-heat,nameplate,,,,,750,,",
        "H,,,2-15,,high-heat,nameplate,,,,,1500,,",
        "h,,,,,Low heat,nameplate,,,,,700,,",
      ]),
    );
    expect(fatesOf(table)).toEqual([
      [2, "held-back", "device-incomplete"],
      [3, "rejected", "device-differs"],
      [4, "rejected", "duplicate"],
    ]);
    const messages = table.fates.map((fate) => ("message" in fate ? fate.message : ""));
    expect(messages[1]).toBe("Line 3: device H has zone 2-15 here but 2-14 in its first row.");
    expect(messages[2]).toBe("Line 4: setting low-heat of this device already stands in line 2.");
  });

  it("are held to the limits that the caller gives", () => {
    const table = acceptedTable(
      read(["H,,fan-heater-1500,2-14,,high-heat,nameplate,,,,,9000,,"], {
        settingFaults: (setting) => ((setting.powerW ?? 0) > 3000 ? ["9000 W is more than a plug carries"] : []),
      }),
    );
    expect(table.fates).toMatchObject([{ fate: "rejected", code: "setting-limits" }]);
  });

  it("read kW and mA by their headings", () => {
    const bytes = textBytes(
      "device;class;zone;setting;basis;current (mA);current resolution (mA);power (kW)\nF;desk-fan;2-14;on;clamp;195;10;\nH;fan-heater-1500;2-14;high;nameplate;;;1,5\n",
    );
    const table = acceptedTable(readDevicesTable({ bytes }, building));
    expect(table.rows.map(({ row }) => row.settings[0])).toMatchObject([
      { currentA: 0.195, currentResolutionA: 0.01 },
      { powerW: 1500 },
    ]);
  });

  it("need their columns, which are named", () => {
    const refusal = refusedTable(readDevicesTable({ bytes: textBytes("device,zone\nH,2-14\n") }, building));
    expect(refusal.message).toBe(
      'A devices table needs the columns "class", "setting", "basis". Columns found in line 1: device, zone.',
    );
  });
});
