import { describe, expect, it } from "vitest";
import { COMPLAINT_WORDS, readComplaint } from "@/lib/importers/complaints/complaint-words";
import { readComplaints } from "@/lib/importers/complaints/read-complaints";

const rule = { words: COMPLAINT_WORDS };

describe("a complaint's words", () => {
  it.each([
    ["It is FREEZING in here!", "cold", ["freezing"]],
    ["Room too warm since Monday", "hot", ["too warm"]],
    ["Not cold enough in the server corner", "hot", ["not cold"]],
    ["Hot in the morning, cold after lunch", "other", ["cold", "hot"]],
    ["Lamp is broken", "other", []],
    ["He scolded the hotel", "other", []],
    ["No heating, cold feet", "cold", ["no heating", "cold"]],
  ])("%s: %s", (text, kind, matched) => {
    expect(readComplaint(text, COMPLAINT_WORDS)).toEqual({ kind, matched });
  });

  it("follow the list that the user has corrected", () => {
    expect(readComplaint("Klimaanlage zu kalt", { cold: ["zu kalt"], hot: [] }).kind).toBe("cold");
  });
});

describe("a table of complaints", () => {
  it("is read by its headings, whatever the delimiter", () => {
    const read = readComplaints("Opened;Zone;Description\n13/07/2025 2:05 pm;2-14;too cold\n", rule);
    expect(read).toMatchObject({
      status: "ok",
      columns: { date: 0, zone: 1, text: 2 },
      dateOrder: "dmy",
      rows: [{ line: 2, status: "read", date: "2025-07-13", minute: 845, zoneCode: "2-14", kind: "cold" }],
    });
  });

  it("says of every row why it cannot be read", () => {
    const read = readComplaints(
      "date,time,zone,text\n,10:00,2-14,cold\n2025-07-01,25:00,2-14,cold\n2025-02-30,,2-14,hot\n05/06/2025,,2-14,hot\n",
      rule,
    );
    const rows = read.status === "ok" ? read.rows : [];
    expect(rows.map((row) => (row.status === "rejected" ? row.why : ""))).toEqual([
      "the date is blank",
      '"25:00" is no time of day; write it as 14:30',
      '"2025-02-30" is no date; write it as 2025-03-15',
      expect.stringContaining("two ways"),
    ]);
  });

  it("asks for the column that no heading names, and takes the answer", () => {
    const text = "a,b,c\n2025-07-01,2-14,hot\n";
    expect(readComplaints(text, rule)).toMatchObject({ status: "refused", headings: ["a", "b", "c"] });
    expect(readComplaints(text, { ...rule, columns: { date: 0, zone: 1, text: 2 } }).status).toBe("ok");
  });

  it("takes what a person set before what the words say", () => {
    const read = readComplaints("date,desk,text\n2025-07-01,D1,stuffy\n", { ...rule, kinds: { 2: "hot" } });
    expect(read).toMatchObject({ rows: [{ kind: "hot", matched: [] }] });
  });
});
