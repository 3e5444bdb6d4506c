import { describe, it } from "vitest";
import { activePowerW, elementCurrentAtVoltageA, elementPowerAtVoltageW } from "@/lib/electrical/active-power";
import { dutyFromSeries } from "@/lib/electrical/duty-from-series";
import {
  clampHalfWidthA,
  POWER_FACTOR_HALF_WIDTH,
  rectangularUncertainty,
  voltageHalfWidthV,
} from "@/lib/electrical/measurement-uncertainty";
import { compareWithNameplate, nameplateBandW } from "@/lib/electrical/nameplate-band";
import { settingPower } from "@/lib/electrical/setting-power";
import { compareWithCase, loadCheckValues } from "../../support/check-values";
import { clampReading } from "./readings";

describe("active power", () => {
  for (const check of loadCheckValues<{ V: number; I_A: number; PF: number }>("electrical/active-power").cases) {
    it(check.name, () => {
      const { V, I_A, PF } = check.inputs;
      compareWithCase(check, { P_W: activePowerW({ voltageV: V, currentA: I_A, powerFactor: PF }) });
    });
  }
});

type ClampInputs = { I_A: number; V_assumed: number; PF: number; resolution_A: number };

describe("uncertainty of a clamp reading", () => {
  for (const check of loadCheckValues<ClampInputs>("electrical/clamp-power").cases) {
    it(check.name, () => {
      const { I_A, V_assumed, PF, resolution_A } = check.inputs;
      const halfWidthA = clampHalfWidthA({ currentA: I_A, resolutionA: resolution_A });
      const power = settingPower(
        clampReading({ currentA: I_A, voltageV: V_assumed, powerFactor: PF, currentResolutionA: resolution_A }),
        null,
      );
      if (power.status === "refused") throw new Error(power.message);
      compareWithCase(check, {
        a_I_A: halfWidthA,
        u_I_A: rectangularUncertainty(halfWidthA),
        u_V_V: rectangularUncertainty(voltageHalfWidthV({ voltageV: V_assumed, measured: false })),
        u_PF: rectangularUncertainty(POWER_FACTOR_HALF_WIDTH.element),
        P_W: power.powerW.value,
        u_c_rel: power.standardUncertaintyW / power.powerW.value,
        u_c_W: power.standardUncertaintyW,
        U_k2_W: power.expandedUncertaintyW,
      });
    });
  }
});

type VoltageInputs = { nameplateW: number; nameplateV: number; voltageV: number };

describe("a heating element at another voltage", () => {
  for (const check of loadCheckValues<VoltageInputs>("electrical/element-voltage").cases) {
    it(check.name, () => {
      const { nameplateW, nameplateV, voltageV } = check.inputs;
      compareWithCase(check, {
        powerW: elementPowerAtVoltageW({ powerW: nameplateW, voltageV: nameplateV, newVoltageV: voltageV }),
        currentA: elementCurrentAtVoltageA({
          currentA: nameplateW / nameplateV,
          voltageV: nameplateV,
          newVoltageV: voltageV,
        }),
      });
    });
  }
  const currents = loadCheckValues<{ measuredA: number; measuredV: number; nominalV: number }>(
    "electrical/element-current",
  );
  for (const check of currents.cases) {
    it(check.name, () => {
      const { measuredA, measuredV, nominalV } = check.inputs;
      compareWithCase(check, {
        worstCaseA: elementCurrentAtVoltageA({ currentA: measuredA, voltageV: measuredV, newVoltageV: nominalV }),
      });
    });
  }
});

describe("nameplate", () => {
  for (const check of loadCheckValues<{ nameplateW: number }>("electrical/nameplate-band").cases) {
    it(check.name, () => {
      compareWithCase(check, { ...nameplateBandW(check.inputs.nameplateW, "element") });
    });
  }
  const comparisons = loadCheckValues<VoltageInputs & { measuredW: number }>("electrical/nameplate-comparison");
  for (const check of comparisons.cases) {
    it(check.name, () => compareWithCase(check, compareWithNameplate(check.inputs)));
  }
});

describe("duty cycle from a plug-in meter's series", () => {
  type Series = { interval_min: number; P_W: number[]; on_threshold_W: number };
  for (const check of loadCheckValues<Series>("electrical/duty-from-series").cases) {
    it(check.name, () => {
      const { interval_min, P_W, on_threshold_W } = check.inputs;
      const duty = dutyFromSeries({ powerW: P_W, intervalMinutes: interval_min, thresholdW: on_threshold_W });
      if (duty.status === "refused") throw new Error(duty.message);
      compareWithCase(check, { duty: duty.dutyFraction, P_on_mean_W: duty.meanOnPowerW, kWh: duty.energyKwh });
    });
  }
});
