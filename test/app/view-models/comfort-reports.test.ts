import { expect, it } from "vitest";
import {
  ageWords,
  inboxAddress,
  inboxLede,
  responseWords,
  wantedOf,
} from "@/app/buildings/[buildingId]/comfort-reports/inbox-view-model";
import { remarksOf } from "@/app/buildings/[buildingId]/comfort-reports/view-model";

const none = { clothing: null, activity: null, heaterInUse: null, fanInUse: null, draught: null, note: "" };

const zone = { zoneId: 1, zoneCode: "1", reports: 3, personDays: 2, cold: 2, hot: 1, oldestAtMs: 0, devices: 0 };

it("sums open reports up in a sentence", () => {
  expect(inboxLede({ zones: [] })).toBe("No report is open.");
  const zones = [
    { ...zone, reach: "zone-wide" as const },
    { ...zone, zoneId: 2, reach: "one-desk" as const },
  ];
  expect(inboxLede({ zones })).toBe(
    "6 reports are open in 2 zones: 4 cold, 2 hot. In 1 zone more than one person reports.",
  );
});

it("says how fast reports were answered, and that none was", () => {
  expect(responseWords({ days: 90, reports: 0, answered: 0, medianMs: null })).toMatch(/^No report/);
  expect(responseWords({ days: 90, reports: 4, answered: 0, medianMs: null })).toBe(
    "Of 4 reports of the last 90 days 0 were answered.",
  );
  expect(responseWords({ days: 90, reports: 7, answered: 6, medianMs: 5 * 3_600_000 })).toBe(
    "Of 7 reports of the last 90 days 6 were answered, half of them within 5 h.",
  );
  expect(responseWords({ days: 90, reports: 1, answered: 1, medianMs: null })).toBe(
    "Of 1 report of the last 90 days 1 was answered; too few people for a usual time.",
  );
  expect(ageWords(60_000)).toBe("under 1 h");
  expect(ageWords(72 * 3_600_000)).toBe("3 days");
});

it("keeps what is asked for in the addresses of pages, and begins another view at its first page", () => {
  const wanted = wantedOf({ view: "closed", zone: "7", page: "3" });
  expect(wanted).toEqual({ view: "closed", zoneId: 7, page: 3 });
  const href = inboxAddress("/r", wanted);
  expect(href({ page: 4 })).toBe("/r?view=closed&zone=7&page=4");
  expect(href({ view: "open" })).toBe("/r?zone=7");
  expect(wantedOf({ view: "nonsense", zone: "x", page: "-1" })).toEqual({ view: "open", zoneId: null, page: 1 });
});

it("remarks what was said with yes, and the note in quotation marks; no answer is no remark", () => {
  expect(remarksOf(none)).toBe("");
  expect(remarksOf({ ...none, heaterInUse: false, draught: true, note: "by the window" })).toBe(
    "draught; \u201cby the window\u201d",
  );
  expect(remarksOf({ ...none, heaterInUse: true, fanInUse: true })).toBe("heater in use; fan in use");
});
