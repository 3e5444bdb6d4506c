import { describe, expect, it } from "vitest";
import { type SettingEntry, settingEntryFaults } from "@/lib/electrical/setting-limits";

const entry = (given: Partial<SettingEntry>): SettingEntry => ({
  basis: "clamp",
  currentA: 12.1,
  voltageV: 120,
  hoursPerYear: 220,
  dutyFraction: 1,
  ...given,
});

describe("what a person types for a setting", () => {
  it("passes an ordinary sheet", () => {
    expect(settingEntryFaults(entry({}))).toEqual({});
    expect(settingEntryFaults(entry({ basis: "class-default", currentA: null, voltageV: null }))).toEqual({});
  });

  it.each([
    [1500, "1500 A is more than any outlet carries; was this watts, or 15.00 A?"],
    [898, "898 A is more than any outlet carries; was this watts, or 8.98 A?"],
    [80, "80 A is more than any outlet carries; was this watts, or 8.0 A?"],
  ])("asks about %s A", (currentA, sentence) => {
    expect(settingEntryFaults(entry({ currentA })).currentA).toBe(sentence);
  });

  it.each<[string, Partial<SettingEntry>, string]>([
    ["currentA", { currentA: -0.24 }, "negative"],
    ["currentA", { currentA: Number.NaN }, "not a number"],
    ["currentA", { currentA: null }, "Type the current"],
    ["currentA", { currentA: 55 }, "6600 W"],
    ["currentResolutionA", { currentResolutionA: 0 }, "last digit"],
    ["currentResolutionA", { currentResolutionA: 10 }, "last digit"],
    ["voltageV", { voltageV: 12 }, "between 90 and 260 V"],
    ["voltageV", { voltageV: 400 }, "between 90 and 260 V"],
    ["voltageV", { voltageV: Number.NaN }, "not a number"],
    ["powerFactor", { powerFactor: 95 }, "For 95 % type 0.95"],
    ["powerFactor", { powerFactor: 0 }, "above 0"],
    ["powerW", { basis: "plug-meter", powerW: null }, "plug-in meter"],
    ["nameplateW", { basis: "nameplate", powerW: null }, "nameplate"],
    ["powerW", { basis: "nameplate", powerW: 15_000 }, "more than a portable heater"],
    ["powerW", { basis: "nameplate", powerW: -5 }, "negative"],
    ["hoursPerYear", { hoursPerYear: 9000 }, "8760 hours"],
    ["hoursPerYear", { hoursPerYear: -1 }, "negative"],
    ["dutyFraction", { dutyFraction: 60 }, "For 60 % type 0.6"],
    ["dutyFraction", { dutyFraction: -0.1 }, "between 0 and 1"],
    ["pricePerKwh", { pricePerKwh: -0.13 }, "negative"],
  ])("tells what is wrong with %s in %o", (field, given, words) => {
    const faults: Partial<Record<string, string>> = settingEntryFaults(entry(given));
    expect(Object.keys(faults)).toEqual([field]);
    expect(faults[field]).toContain(words);
  });

  it("reports all faults together", () => {
    expect(Object.keys(settingEntryFaults(entry({ currentA: -1, voltageV: 12, dutyFraction: 2 })))).toHaveLength(3);
  });

  it("accepts the limits themselves", () => {
    const least = { voltageV: 90, hoursPerYear: 0, dutyFraction: 0, powerFactor: 0.01, currentA: 0 };
    const most = { voltageV: 260, hoursPerYear: 8784, dutyFraction: 1, powerFactor: 1, powerW: 5000 };
    expect(settingEntryFaults(entry(least))).toEqual({});
    expect(settingEntryFaults(entry(most))).toEqual({});
  });
});
