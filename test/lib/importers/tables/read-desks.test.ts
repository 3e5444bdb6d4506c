import { describe, expect, it } from "vitest";
import { readDesksTable } from "@/lib/importers/tables/read-desks";
import { acceptedTable, fatesOf, refusedTable, textBytes } from "./table-support";

const zoneCodes = ["2-14", "2-15", "2-16A"];
const read = (text: string, codes = zoneCodes) => readDesksTable({ bytes: textBytes(text) }, { zoneCodes: codes });

describe("desks", () => {
  it("say which zone is not there and what to do", () => {
    const text = "desk,zone,note\n1,2-14,\n2,2-14,\n3,2-15,\n4,2-15,\n5,2-15,window\n6,9-99,\n";
    const table = acceptedTable(read(text));
    expect(table.rows).toHaveLength(5);
    expect(table.fates.at(-1)).toEqual({
      line: 7,
      fate: "rejected",
      code: "zone-unknown",
      message: "Line 7: zone 9-99 does not exist in this building; add it first or correct the code.",
      excerpt: "6, 9-99, ",
    });
  });

  it("find their zone in another spelling, and say so", () => {
    const table = acceptedTable(read("desk,zone\n1,2-16a\n"));
    expect(table.rows[0]?.row).toEqual({ code: "1", zoneCode: "2-16A", note: "" });
    expect(table.fates[0]).toMatchObject({ fate: "repaired", message: 'Line 2: zone "2-16a" read as 2-16A.' });
  });

  it("are not given to one of two zones that a loose spelling fits", () => {
    expect(fatesOf(acceptedTable(read("desk,zone\n1,a 1\n", ["A1", "a1"])))).toEqual([[2, "rejected", "zone-unknown"]]);
  });

  it("hint at a spreadsheet's dates", () => {
    const [fate] = acceptedTable(read("desk,zone\n1,14-Feb\n")).fates;
    expect(fate && "message" in fate && fate.message).toContain("a spreadsheet seems to have turned 2-14 into a date");
  });

  it("stand once in a file and have a code and a zone", () => {
    const table = acceptedTable(read("desk,zone\nD1,2-14\nd 1,2-15\n,2-14\nD2,\n"));
    expect(fatesOf(table)).toEqual([
      [2, "accepted", ""],
      [3, "rejected", "duplicate"],
      [4, "rejected", "code-blank"],
      [5, "rejected", "zone-blank"],
    ]);
  });

  it("are not read from a list of zones", () => {
    expect(refusedTable(read("zone,name\n2-14,North\n"))).toMatchObject({ code: "column-missing", lines: [1] });
  });
});
