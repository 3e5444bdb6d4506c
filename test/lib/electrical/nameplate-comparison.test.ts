import { expect, it } from "vitest";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { electricalFindingText } from "@/lib/electrical/findings";
import { settingPower } from "@/lib/electrical/setting-power";
import type { SettingReading } from "@/lib/electrical/setting-reading";
import { clampReading } from "./readings";

const findingsOf = (changes: Partial<SettingReading>) => {
  const reading = clampReading({ nameplateW: 1500, ratedVoltageV: 120, currentResolutionA: 0.01, ...changes });
  const power = settingPower({ ...reading, voltageMeasured: true }, deviceClassById("fan-heater-1500"));
  if (power.status === "refused") throw new Error(power.message);
  return power.findings;
};

// Common practice, no source: what goes wrong with a clamp at a heater. The band is that of IEC 60335-1 (from memory).
it.each([
  ["within the band", { currentA: 12.05, voltageV: 117 }, undefined, ""],
  ["both conductors in the jaws", { currentA: 0.02, voltageV: 120 }, "reading-implausibly-low", "both conductors"],
  [
    "an uncounted loop of ten",
    { currentA: 41.6, voltageV: 120, nameplateW: 500 },
    "reading-ten-times",
    "choose 10 turns",
  ],
  ["ten turns that were one", { currentA: 1.25, clampTurns: 10, voltageV: 120 }, "reading-a-tenth", "choose 1 turn"],
  ["a lower step", { currentA: 6.25, voltageV: 120 }, "below-nameplate", "lower step"],
  ["another label", { currentA: 15.5, voltageV: 120 }, "above-nameplate", "another model's"],
])("asks of %s", (_, changes, code, words) => {
  const NOT_OF_THE_LABEL = ["small-current", "current-above-plug"];
  const [finding] = findingsOf(changes).filter((each) => !NOT_OF_THE_LABEL.includes(each.code));
  expect(finding?.code).toBe(code);
  if (finding) expect(electricalFindingText(finding)).toContain(words);
});

it("says of a meter that is not a true-RMS one, and of an outlet that gives way, what to do", () => {
  const codes = findingsOf({ currentA: 12.2, voltageV: 117.5, openVoltageV: 121.5, isTrueRms: false }).map(
    ({ code }) => code,
  );
  expect(codes).toEqual(["not-true-rms", "voltage-drop"]);
});

it("says that something surer is on record than what the figure is taken from", () => {
  const [, finding] = findingsOf({ basis: "nameplate", currentA: 12 });
  expect(finding && electricalFindingText(finding)).toContain("a clamp meter's current is on record and is surer");
});

it("accepts a small current through a loop of ten, and refuses it without", () => {
  const small = { settingName: "fan-only", nameplateW: null, currentResolutionA: 0.1, voltageV: 120 };
  const at = (changes: Partial<SettingReading>) =>
    settingPower({ ...clampReading(small), ...changes }, deviceClassById("fan-heater-1500"));
  const direct = at({ currentA: 0.24 });
  expect(direct).toMatchObject({ status: "refused", code: "current-below-meter" });
  expect(direct.status === "refused" && direct.message).toContain("plug-in energy meter");
  expect(at({ currentA: 0.24, clampTurns: 10 }).status).toBe("ok");
});
