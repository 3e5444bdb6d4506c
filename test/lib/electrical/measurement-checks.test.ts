import { describe, it } from "vitest";
import { powerFactorOf } from "@/lib/electrical/active-power";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { dutyFromEnergy, energyOfStretches } from "@/lib/electrical/duty-from-energy";
import { phaseControlled, rmsOfPeak } from "@/lib/electrical/phase-control";
import { resolvedSetting } from "@/lib/electrical/resolved-setting";
import { settingPower } from "@/lib/electrical/setting-power";
import { voltageUnderLoad } from "@/lib/electrical/voltage-under-load";
import { compareWithCase, loadCheckValues } from "../../support/check-values";
import { clampReading } from "./readings";

function casesOf<Inputs>(file: string, check: (inputs: Inputs) => Record<string, number | string | boolean>) {
  describe(file, () => {
    for (const each of loadCheckValues<Inputs>(`electrical/${file}`).cases)
      it(each.name, () => compareWithCase(each, check(each.inputs)));
  });
}

casesOf<{ voltageV: number; currentA: number; powerW: number }>("power-factor", powerFactorOf);
casesOf<{ peakA: number }>("peak-to-rms", ({ peakA }) => ({ rmsA: rmsOfPeak(peakA) }));
casesOf<{ firingAngleDeg: number; peakA: number }>("phase-control", phaseControlled);
casesOf<{ voltageOffV: number; voltageOnV: number; currentA: number }>(
  "voltage-under-load",
  ({ voltageOffV, voltageOnV, currentA }) =>
    voltageUnderLoad({ openVoltageV: voltageOffV, loadVoltageV: voltageOnV, currentA }),
);
casesOf<{ energyKwh: number; hoursOn: number; statePowerW: number }>("duty-from-energy", (inputs) => ({
  dutyFraction: dutyFromEnergy(inputs),
}));
casesOf<{ intervals: { powerW: number; hours: number }[] }>("energy-of-stretches", ({ intervals }) => ({
  energyKwh: energyOfStretches(intervals),
}));

casesOf<{ rawReadingA: number; clampTurns: number; powerState?: string; nameplateA?: number }>(
  "clamp-turns",
  ({ rawReadingA, clampTurns, powerState = "high-heat", nameplateA }) => {
    const { currentA } = resolvedSetting({ basis: "clamp", rawReadingA, clampTurns });
    const power = settingPower(
      clampReading({
        settingName: powerState,
        currentA,
        clampTurns,
        currentResolutionA: 0.01,
        voltageV: 120,
        nameplateW: nameplateA === undefined ? null : 120 * nameplateA,
      }),
      deviceClassById("fan-heater-1500"),
    );
    const codes = power.status === "ok" ? power.findings.map(({ code }) => code) : [];
    return {
      currentA: currentA ?? Number.NaN,
      finding: codes.find((code) => code === "reading-implausibly-low") ?? codes.join(", "),
    };
  },
);
