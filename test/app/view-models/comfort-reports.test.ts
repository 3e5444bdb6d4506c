import { expect, it } from "vitest";
import { countsLede, remarksOf } from "@/app/buildings/[buildingId]/comfort-reports/view-model";

const none = { clothing: null, activity: null, heaterInUse: null, fanInUse: null, draught: null, note: "" };

it("counts wishes by kind, and zones once", () => {
  expect(countsLede([])).toBe("What occupants say, with zone, desk and time.");
  expect(countsLede([{ preference: "warmer", zoneId: 1 }])).toBe(
    "1 report from 1 zone: 1 would like it warmer, 0 cooler, 0 as it is.",
  );
  expect(
    countsLede([
      { preference: "warmer", zoneId: 1 },
      { preference: "cooler", zoneId: 2 },
      { preference: "warmer", zoneId: 2 },
      { preference: "no-change", zoneId: 2 },
    ]),
  ).toBe("4 reports from 2 zones: 2 would like it warmer, 1 cooler, 1 as it is.");
});

it("remarks what was said with yes, and the note in quotation marks; no answer is no remark", () => {
  expect(remarksOf(none)).toBe("");
  expect(remarksOf({ ...none, heaterInUse: false, draught: true, note: "by the window" })).toBe(
    "draught; \u201cby the window\u201d",
  );
  expect(remarksOf({ ...none, heaterInUse: true, fanInUse: true })).toBe("heater in use; fan in use");
});
