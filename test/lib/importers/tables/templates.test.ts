import { describe, expect, it } from "vitest";
import { DEVICE_CLASSES } from "@/lib/electrical/device-classes";
import { readBillsTable } from "@/lib/importers/tables/read-bills";
import { readDesksTable } from "@/lib/importers/tables/read-desks";
import { readDevicesTable } from "@/lib/importers/tables/read-devices";
import { readZonesTable } from "@/lib/importers/tables/read-zones";
import { TEMPLATES } from "@/lib/importers/tables/templates";
import { acceptedTable, refusedTable, textBytes } from "./table-support";

const building = {
  zoneCodes: ["2-14"],
  desks: [
    { code: "2-14-01", zoneCode: "2-14" },
    { code: "2-14-02", zoneCode: "2-14" },
  ],
  classes: DEVICE_CLASSES,
};
const readers = {
  zones: (text: string) => readZonesTable({ bytes: textBytes(text) }),
  desks: (text: string) => readDesksTable({ bytes: textBytes(text) }, building),
  devices: (text: string) => readDevicesTable({ bytes: textBytes(text) }, building),
  bills: (text: string) => readBillsTable({ bytes: textBytes(text) }),
};
const kinds = ["zones", "desks", "devices", "bills"] as const;

describe.each(kinds)("the template of the %s table", (kind) => {
  const { text } = TEMPLATES[kind];

  it("sent back unchanged is refused with what to do", () => {
    const refusal = refusedTable<unknown>(readers[kind](text));
    expect(refusal.code).toBe("only-examples");
    expect(refusal.message).toContain("begin with #");
  });

  it("has two examples that are accepted as they stand once the # is taken away", () => {
    const lines = text.split("\r\n");
    const examples = lines.slice(2).map((line) => line.replace(/^# /, ""));
    const table = acceptedTable<unknown>(readers[kind]([lines[0], ...examples].join("\r\n")));
    expect(table.fates.map((fate) => fate.fate)).toEqual(["accepted", "accepted"]);
    expect(table.findings).toEqual([]);
  });

  it("takes rows below the examples", () => {
    const row = {
      zones: "3-01,,,,,,",
      desks: "9,2-14,",
      devices: "F,,desk-fan,2-14,,on,default,,,,,,,",
      bills: "2025-03-01,2025-03-31,27000,,",
    }[kind];
    const table = acceptedTable<unknown>(readers[kind](`${text}${row}\r\n`));
    expect(table.rows).toHaveLength(1);
    expect(table.fates.filter((fate) => fate.fate === "ignored")).toHaveLength(3);
  });
});
