import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { readBillsTable } from "@/lib/importers/tables/read-bills";
import { acceptedTable, fatesOf, refusedTable, textBytes } from "./table-support";

const read = (...lines: string[]) => readBillsTable({ bytes: textBytes(lines.join("\n")) });
const spans = (...lines: string[]) =>
  acceptedTable(read(...lines)).rows.map(({ row }) => `${row.fromDate} ${row.untilDate}`);

describe("bills", () => {
  it("end on their last day, or where the next one begins", () => {
    expect(spans("from,to,kWh", "2025-01-01,2025-01-31,10", "2025-02-01,2025-02-28,20")).toEqual([
      "2025-01-01 2025-02-01",
      "2025-02-01 2025-03-01",
    ]);
    expect(spans("from,to,kWh", "2025-01-03,2025-02-02,10", "2025-02-02,2025-03-05,20")).toEqual([
      "2025-01-03 2025-02-02",
      "2025-02-02 2025-03-05",
    ]);
  });

  it("may say a month, over the end of a year and a leap day", () => {
    expect(spans("month,energy (MWh)", "2023-12,1", "2024-02,2")).toEqual([
      "2023-12-01 2024-01-01",
      "2024-02-01 2024-03-01",
    ]);
    expect(acceptedTable(read("month,energy (MWh)", "2023-12,1.5")).rows[0]?.row.energyKwh).toBe(1500);
  });

  it("are put in the order of time", () => {
    expect(spans("month,kWh", "2025-03,1", "2025-01,1")).toEqual(["2025-01-01 2025-02-01", "2025-03-01 2025-04-01"]);
  });

  it("read dates as the file itself shows, and ask when it does not", () => {
    expect(spans("from,to,kWh", "1/2/2025,1/31/2025,10")).toEqual(["2025-01-02 2025-02-01"]);
    expect(spans("from,to,kWh", "1.2.2025,28.2.2025,10")).toEqual(["2025-02-01 2025-03-01"]);
    const [fate] = acceptedTable(read("from,to,kWh", "1/2/2025,2/3/2025,10")).fates;
    expect(fate).toMatchObject({ fate: "rejected", code: "date-unreadable" });
    expect(fate && "message" in fate && fate.message).toContain("write it as 2025-03-15");
  });

  it("are rejected by line when they cannot be", () => {
    const table = acceptedTable(
      read(
        "from,to,energy_kWh,charges",
        "2025-01-01,2025-01-31,100,12",
        "2025-01-20,2025-02-20,100,12",
        "2025-03-01,2025-02-01,100,12",
        "2025-03-01,2025-09-30,100,12",
        "2025-10-01,2025-10-31,,12",
        "2025-11-01,2025-11-31,100,12",
        "2025-12-01,2025-12-31,-5,12",
      ),
    );
    expect(fatesOf(table)).toEqual([
      [2, "accepted", ""],
      [3, "rejected", "bills-overlap"],
      [4, "rejected", "days-crossed"],
      [5, "rejected", "bill-too-long"],
      [6, "rejected", "energy-blank"],
      [7, "rejected", "date-unreadable"],
      [8, "rejected", "outside-limits"],
    ]);
    expect(table.rows).toHaveLength(1);
  });

  const STORED = [
    { fromDate: "2025-01-01", untilDate: "2025-02-01", energyKwh: 28_150.4 },
    { fromDate: "2025-02-01", untilDate: "2025-03-01", energyKwh: 27_000 },
  ];
  const against = (...lines: string[]) =>
    acceptedTable(readBillsTable({ bytes: textBytes(lines.join("\n")) }, { bills: STORED }));

  it("that cover days of a bill of another file are rejected, with the bill that is here and what to do", () => {
    const table = against("from,to,kWh", "2025-01-15,2025-02-14,30000", "2025-03-01,2025-03-31,25000");
    expect(fatesOf(table)).toEqual([
      [2, "rejected", "bill-overlaps-stored"],
      [3, "accepted", ""],
    ]);
    const [fate] = table.fates;
    expect(fate && "message" in fate && fate.message).toBe(
      "Line 2: its days overlap those of the bill of 2025-01-01 to 2025-01-31 (28150 kWh, 31 days) that is here already, and nothing may count twice: correct the days here, or remove that bill on the energy meter page and bring the file in again.",
    );
  });

  it("replace the bill of the same first day, and make room by it only when they are taken themselves", () => {
    expect(fatesOf(against("from,to,kWh", "2025-01-01,2025-01-20,18000", "2025-01-21,2025-01-31,10000"))).toEqual([
      [2, "accepted", ""],
      [3, "accepted", ""],
    ]);
    // The first would reach into February, whose bill stays: so January stays as well, and the second overlaps it.
    expect(fatesOf(against("from,to,kWh", "2025-01-01,2025-02-10,18000", "2025-01-11,2025-01-31,10000"))).toEqual([
      [2, "rejected", "bill-overlaps-stored"],
      [3, "rejected", "bills-overlap"],
    ]);
  });

  it("share the day of a meter reading with a bill of another file, which then counts in the later one", () => {
    const after = against("from,to,kWh", "2025-02-28,2025-03-30,25000");
    expect(fatesOf(after)).toEqual([[2, "repaired", "bill-day-shared"]]);
    expect(after.rows[0]?.row).toMatchObject({ fromDate: "2025-02-28", untilDate: "2025-03-31" });
    const before = against("from,to,kWh", "2024-12-02,2025-01-01,25000");
    expect(fatesOf(before)).toEqual([[2, "repaired", "bill-day-shared"]]);
    expect(before.rows[0]?.row).toMatchObject({ fromDate: "2024-12-02", untilDate: "2025-01-01" });
  });

  it("need their days and their energy", () => {
    expect(refusedTable(read("from,kWh", "2025-01-01,5"))).toMatchObject({ code: "column-missing" });
    expect(refusedTable(read("month,charges", "2025-01,5"))).toMatchObject({ code: "column-missing" });
  });
});

const REAL = fileURLToPath(
  new URL("../../../../../shared/data/utility-bills-monthly/Liberty_50_100_Electric_Summary.csv", import.meta.url),
);

describe.skipIf(!existsSync(REAL))("a municipal building's summary of bills (utility-bills-monthly)", () => {
  it("is taken whole, and adds up to the sums of its description", () => {
    const table = acceptedTable(readBillsTable({ bytes: readFileSync(REAL) }));
    expect(table.fates.every((each) => each.fate === "accepted")).toBe(true);
    expect(table.rows).toHaveLength(133);
    const of2025 = table.rows.filter(({ row }) => row.fromDate.startsWith("2025"));
    const sum = (of: (row: (typeof of2025)[number]["row"]) => number): number =>
      of2025.reduce((total, { row }) => total + of(row), 0);
    expect(sum((row) => row.energyKwh)).toBe(2_757_041);
    expect(sum((row) => row.charges ?? 0)).toBeCloseTo(351_589.68, 2);
  });
});
