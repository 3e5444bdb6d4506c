import { describe, expect, it } from "vitest";
import {
  countWords,
  profilePoints,
  shapeWords,
  versionWords,
} from "@/app/buildings/[buildingId]/imports/profiles/view-model";
import type { ProfileContent } from "@/lib/services/mapping-profiles/profile-content";

const content: ProfileContent = {
  shape: { layout: "long", delimiter: ";", dateFormat: null },
  answers: {
    dateOrder: "dmy",
    clock: "local-time",
    valueColumn: "Average",
    flagColumn: { good: ["0"], seen: ["0", "1"] },
  },
  points: {
    A: {
      unitAsWritten: null,
      holds: "numeric",
      choice: { skip: false, kind: "zone-air-temp", zoneId: 3, unit: "degF" },
    },
    B: { unitAsWritten: "%", holds: "numeric", choice: { skip: true } },
    C: {
      unitAsWritten: "°C",
      holds: "numeric",
      choice: { skip: false, kind: "outdoor-air-temp", zoneId: null, unit: null },
    },
    D: { unitAsWritten: null, holds: "state", choice: { skip: true, undecided: true } },
    E: { unitAsWritten: null, holds: "state", choice: { skip: false, kind: "occupancy", zoneId: 9, unit: null } },
  },
  acceptedCautions: [],
};

describe("a mapping profile on its page", () => {
  it("says what it answers and what shape it expects", () => {
    expect(shapeWords({ content })).toBe(
      "one row a reading; dates day first; local time; value from Average; good flags 0",
    );
  });

  it("lists its points with kind, zone and unit, and says of a zone that it is gone", () => {
    expect(profilePoints({ content }, new Map([[3, "2-14"]]))).toEqual([
      { name: "A", is: "zone air temperature", zone: "2-14", unit: "°F, as answered" },
      { name: "B", is: "left out", zone: "", unit: "%" },
      { name: "C", is: "outdoor air temperature", zone: "", unit: "°C" },
      { name: "D", is: "asked about each time", zone: "", unit: "" },
      { name: "E", is: "occupancy", zone: "a zone that is gone", unit: "" },
    ]);
    expect(countWords({ content })).toBe("3, and 2 left out");
  });

  it("says from which file, when and by whom", () => {
    const made = { version: 2, fileName: "july.csv", madeAtMs: Date.UTC(2026, 6, 1, 3), madeBy: "Robin Vale" };
    expect(versionWords(made, "America/Chicago")).toBe("Version 2, from july.csv, 30 Jun 2026, 22:00 by Robin Vale");
  });
});
