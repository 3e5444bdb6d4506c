import { describe, expect, it } from "vitest";
import { assessCircuit, type CircuitDevice, type CircuitInput } from "@/lib/electrical/circuit/assess-circuit";
import type { RuleSetId } from "@/lib/electrical/circuit/circuit-kinds";
import { continuousLimitA } from "@/lib/electrical/circuit/continuous-limit";
import { deviceLoad } from "@/lib/electrical/circuit/device-load";
import { diversifiedLoad } from "@/lib/electrical/circuit/diversified-load";
import { exceedsTwinSocket, receptacleLimitA } from "@/lib/electrical/circuit/outlet-findings";
import { largestPortableHeater, plugFuse } from "@/lib/electrical/circuit/plug-fuse";
import { RULE_SETS } from "@/lib/electrical/circuit/rule-sets";
import { tripBand } from "@/lib/electrical/circuit/trip-band";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { compareWithCase, loadCheckValues } from "../../support/check-values";

/** Sets of rules that a case's code stands for: each must give what the case says. */
const CODES: Record<string, readonly RuleSetId[]> = { NEC: ["nec-2017", "nec-2023"], IEC: ["iec-uk-2018"] };

type Code = { code: "NEC" | "IEC" };

function casesOf<Inputs>(
  file: string,
  check: (inputs: Inputs, ruleSet: RuleSetId) => Record<string, number | string | boolean>,
) {
  describe(file, () => {
    for (const each of loadCheckValues<Inputs>(`electrical/${file}`).cases) {
      const codes = CODES[(each.inputs as Partial<Code>).code ?? "NEC"] ?? [];
      expect(codes.length).toBeGreaterThan(0);
      it.each(codes)(`${each.name} (%s)`, (ruleSet) => compareWithCase(each, check(each.inputs, ruleSet)));
    }
  });
}

casesOf<Code & { breakerRatingA: number; continuousFactor?: number; voltageV?: number }>(
  "continuous-limits",
  ({ breakerRatingA, continuousFactor, voltageV = 0 }, ruleSet) => {
    const limitA = continuousLimitA(breakerRatingA, continuousFactor ?? RULE_SETS[ruleSet].continuousFactor.value);
    return { continuousLimitA: limitA, continuousLimitW: limitA * voltageV };
  },
);

const alone = (input: Partial<CircuitInput> & { code: RuleSetId }, device: CircuitDevice) =>
  assessCircuit({
    breakerRatingA: null,
    voltageV: 120,
    baseContinuousA: 0,
    baseNonContinuousA: 0,
    devices: [device],
    ...input,
  });

casesOf<Code & { breakerRatingA: number; multiOutlet: boolean; nameplateW: number; nameplateV: number }>(
  "single-item-share",
  ({ breakerRatingA, multiOutlet, nameplateW, nameplateV }, code) => {
    const nameplateA = nameplateW / nameplateV;
    const circuit = alone(
      { code, breakerRatingA, multiOutlet },
      { name: "heater", nameplateA, states: { on: nameplateA } },
    );
    if (circuit.status !== "ok") throw new Error("not established");
    return {
      nameplateA,
      singleItemLimitA: (RULE_SETS[code].singleItemShare?.value ?? 0) * breakerRatingA,
      exceedsSingleItemShare: circuit.exceedsSingleItemShare,
    };
  },
);

casesOf<Code & { breakerRatingA: number; fastenedTotalA: number }>(
  "fastened-share",
  ({ breakerRatingA, fastenedTotalA }, code) => {
    const device = { name: "fastened", fastened: true, states: { on: fastenedTotalA } };
    const circuit = alone({ code, breakerRatingA, multiOutlet: true }, device);
    if (circuit.status !== "ok") throw new Error("not established");
    return {
      fastenedLimitA: (RULE_SETS[code].fastenedShare?.value ?? 0) * breakerRatingA,
      exceedsFastenedShare: circuit.exceedsFastenedShare,
    };
  },
);

casesOf<Code & { breakerRatingA: number; receptacleRatingA: number; cordAndPlugLoadA: number }>(
  "receptacle-limits",
  ({ breakerRatingA, receptacleRatingA, cordAndPlugLoadA }, code) => {
    const device = { name: "heater", nameplateA: cordAndPlugLoadA, states: { on: cordAndPlugLoadA } };
    const { findings } = alone({ code, breakerRatingA, receptacleRatingA, multiOutlet: true }, device);
    return {
      receptacleLimitA: receptacleLimitA(receptacleRatingA, RULE_SETS[code].receptacleShare?.value ?? 0),
      exceedsReceptacleLimit: findings.some((each) => each.code === "receptacle-over-limit"),
    };
  },
);

casesOf<{ plugRatingA: number; voltageV: number }>("largest-portable-heater", largestPortableHeater);

casesOf<Omit<CircuitInput, "code">>("circuit-assessments", (inputs, code) => {
  const { missing, findings: _, observedA: __, ...rest } = assessCircuit({ ...inputs, code });
  return { ...rest, missing: missing.join(", ") };
});

casesOf<{ devices: CircuitDevice[] }>("circuit-observed", ({ devices }, code) => {
  const circuit = assessCircuit({
    code,
    breakerRatingA: 20,
    voltageV: 120,
    baseContinuousA: 0,
    baseNonContinuousA: 0,
    devices,
  });
  if (circuit.status !== "ok") throw new Error("not established");
  return { worstCaseA: circuit.worstCaseA, observedA: circuit.observedA ?? Number.NaN };
});

casesOf<Code & { ratingMultiple: number; breakerRatingA: number }>(
  "trip-bands",
  ({ ratingMultiple, breakerRatingA }, code) => ({
    tripBand: tripBand({ breakerStandard: RULE_SETS[code].breakerStandard, ratingMultiple, breakerRatingA }),
  }),
);

casesOf<{ fuseRatingA: number; loadA: number }>("plug-fuse", plugFuse);

casesOf<{ twinSocketRatingA: number; loadA: number }>("twin-socket", (inputs) => ({
  exceedsTwinSocket: exceedsTwinSocket(inputs),
}));

casesOf<{ currentsA: number[] }>("office-diversity", ({ currentsA }) => diversifiedLoad(currentsA));

casesOf<{ voltageV: number; deviceClass: string; nameplateW: number | null; nameplateV?: number }>(
  "device-load",
  ({ voltageV, deviceClass, nameplateW, nameplateV = null }, code) => {
    const load = deviceLoad(
      {
        kind: "space-heater",
        deviceClass: deviceClassById(deviceClass),
        nameplateW,
        nameplateA: null,
        nameplateVoltageV: nameplateV,
        settings: [],
      },
      voltageV,
    );
    if (load.status !== "ok") throw new Error("no load");
    const device = { name: "heater", basis: load.basis, states: { top: load.currentA } };
    const { findings } = alone({ code, breakerRatingA: 20 }, device);
    return { currentA: load.currentA, basis: load.basis, finding: findings[0]?.code ?? "" };
  },
);
