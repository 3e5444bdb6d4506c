import { describe, expect, it } from "vitest";
import { airSpeedLimit, relativeAirSpeed } from "@/lib/comfort/air-speed";
import { coolingEffect } from "@/lib/comfort/cooling-effect";
import { voteInMovingAir } from "@/lib/comfort/elevated-air-speed";
import { dissatisfiedByAnkleDraught } from "@/lib/comfort/local-discomfort";
import { standardEffectiveTempC } from "@/lib/comfort/standard-effective-temperature";
import { compareWithCase, loadCheckValues } from "../../support/check-values";
import { conditionOf, type Inputs } from "./conditions";

describe("the standard effective temperature", () => {
  for (const check of loadCheckValues<Inputs>("comfort/standard-effective-temperature").cases)
    it(check.name, () => compareWithCase(check, { setC: standardEffectiveTempC(conditionOf(check.inputs)) }));
});

describe("the cooling effect", () => {
  for (const check of loadCheckValues<Inputs>("comfort/cooling-effect").cases)
    it(check.name, () => compareWithCase(check, { ce: coolingEffect(conditionOf(check.inputs)).highK }));

  type Row = { ta: number; met: number; clo: number; rh: number; vr: number[] };
  for (const check of loadCheckValues<Row>("comfort/cooling-effect-table").cases)
    it(`either way: ${check.name}`, () => {
      const { vr, ta, ...rest } = check.inputs;
      const effects = vr.map((speed) => coolingEffect(conditionOf({ ...rest, ta, tr: ta, vr: speed })));
      compareWithCase(check, {
        highK: effects.map(({ highK }) => highK),
        lowK: effects.map(({ lowK }) => lowK),
      });
    });
});

describe("a vote in moving air", () => {
  const at = (vr: number) => voteInMovingAir(conditionOf({ ta: 26, tr: 26, vr, rh: 50, met: 1.1, clo: 0.5 }));

  it("is that of still air at the still speed, and lower and a range above", () => {
    expect(at(0.1).low).toEqual(at(0.1).high);
    const { low, high } = at(0.6);
    if (low.status !== "ok" || high.status !== "ok") throw new Error("within limits");
    expect(low.pmv).toBeLessThan(high.pmv);
    expect(at(0.3)).not.toEqual(at(0.6));
  });

  it("is refused outside the method's limits", () => {
    expect(at(2.5).low.status).toBe("outside-limits");
  });

  for (const check of loadCheckValues<Inputs & { vAnkle: number }>("comfort/dissatisfied-ankles").cases)
    it(check.name, () => {
      const vote = voteInMovingAir(conditionOf(check.inputs)).low;
      const pmv = vote.status === "ok" ? vote.pmv : Number.NaN;
      compareWithCase(check, { pd: dissatisfiedByAnkleDraught(check.inputs.vAnkle, pmv) });
    });
});

describe("air speed", () => {
  type Limit = { to: number; occupantControl: boolean };
  for (const check of loadCheckValues<Limit>("comfort/air-speed-limit").cases)
    it(check.name, () =>
      compareWithCase(check, { vMax: airSpeedLimit(check.inputs.to, check.inputs.occupantControl) ?? "none" }),
    );
  for (const check of loadCheckValues<{ v: number; met: number }>("comfort/relative-air-speed").cases)
    it(check.name, () => compareWithCase(check, { vr: relativeAirSpeed(check.inputs.v, check.inputs.met) }));
});
