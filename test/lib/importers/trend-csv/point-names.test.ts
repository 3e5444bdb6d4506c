import { describe, expect, test } from "vitest";
import { ambiguousKeys, equipmentKey, spellingsOf } from "@/lib/importers/trend-csv/equipment-key";
import { proposeKind } from "@/lib/importers/trend-csv/propose-kind";
import { proposalBasis, proposeByBasis } from "@/lib/importers/trend-csv/propose-mapping";
import { compareWithCase, loadCheckValues } from "@/test/support/check-values";

const { cases } = loadCheckValues<{ point: string }>("trends/point-names");

/** The answer of the check values' words: a kind, `-low` when hardly believed, to be left out, or to be asked. */
function answerOf(point: string): string {
  const { kind, skip, confidence } = proposeKind(point);
  if (kind === null) return skip ? "leave-out" : "ask";
  return confidence === "low" ? `${kind}-low` : kind;
}

describe("point names against answers found by hand", () => {
  test("there are at least forty", () => expect(cases.length).toBeGreaterThanOrEqual(40));

  test.each(cases)("$name", (check) => {
    const { point } = check.inputs;
    compareWithCase(check, { answer: answerOf(point), key: equipmentKey(point) });
  });

  test("every proposal says why, and what is asked never has more than low confidence", () => {
    for (const { inputs, expected } of cases) {
      const { reason, confidence } = proposeKind(inputs.point);
      expect(reason.length, inputs.point).toBeGreaterThan(10);
      if (expected.answer === "ask") expect(confidence, inputs.point).toBe("low");
    }
  });
});

describe("boxes that are spelled alike", () => {
  test("are flagged when 2-14 and 21-4 both exist, whoever spells 214", () => {
    const both = ambiguousKeys(["VAV-2-14 ZN-T", "VAV-21-4 ZN-T", "VAV_214 CLG-SP", "VAV-3-01 ZN-T"]);
    expect(spellingsOf("VAV_214 CLG-SP", both)).toEqual(["2-14", "21-4"]);
    expect(spellingsOf("VAV-3-01 CLG-SP", both)).toEqual([]);
    expect(ambiguousKeys(["VAV-2-14 ZN-T", "VAV2_14 CLG-SP", "VAV_214 DA-T"]).size).toBe(0);
  });

  test("are not proposed by letters and digits then, and the reason names both", () => {
    const zones = [{ id: 1, code: "VAV-2-14", name: "" }];
    const alone = proposeByBasis("VAV_214 ZN-T", proposalBasis(zones, [], ["VAV_214 ZN-T"]));
    expect(alone).toMatchObject({ zoneId: 1, confidence: "medium" });
    const basis = proposalBasis(zones, [], ["VAV_214 ZN-T", "VAV-21-4 ZN-T"]);
    const flagged = proposeByBasis("VAV_214 ZN-T", basis);
    expect(flagged).toMatchObject({ zoneId: null, confidence: "low" });
    expect(flagged.reason).toContain("2-14 and 21-4 both exist");
    expect(proposeByBasis("VAV-2-14 ZN-T", basis)).toMatchObject({ zoneId: 1, confidence: "high" });
  });
});

describe("a zone by the points of the same equipment", () => {
  const mapped = [{ name: "AHU3.BOX-7.ZN-T", zoneId: 5 }];

  test("is proposed for the setpoint once the temperature has its zone, and says by which", () => {
    const got = proposeByBasis("AHU3/BOX 7/CLG-SP", proposalBasis([], mapped));
    expect(got).toMatchObject({ kind: "cooling-setpoint", zoneId: 5, confidence: "medium" });
    expect(got.reason).toContain("zone as AHU3.BOX-7.ZN-T");
  });

  test("is not proposed from siblings in two zones, from other equipment, or for names without a number", () => {
    const two = [...mapped, { name: "AHU3.BOX-7.DA-T", zoneId: 6 }];
    expect(proposeByBasis("AHU3/BOX 7/CLG-SP", proposalBasis([], two)).zoneId).toBeNull();
    expect(proposeByBasis("AHU3/BOX 8/CLG-SP", proposalBasis([], mapped)).zoneId).toBeNull();
    expect(proposeByBasis("Clg SP", proposalBasis([], [{ name: "Zone Temp", zoneId: 5 }])).zoneId).toBeNull();
  });

  test("goes after the code of a zone in the name itself", () => {
    const zones = [{ id: 9, code: "BOX-7", name: "" }];
    expect(proposeByBasis("AHU3/BOX 7/CLG-SP", proposalBasis(zones, mapped)).zoneId).toBe(9);
  });

  test("is proposed for a bare Temp of known equipment, whose kind is still asked", () => {
    const got = proposeByBasis("AHU3/BOX 7/Temp", proposalBasis([], mapped));
    expect(got).toMatchObject({ kind: null, skip: false, confidence: "low", zoneId: 5 });
  });
});

test("eight thousand names are proposed for in one go", () => {
  const zones = Array.from({ length: 200 }, (_, i) => ({ id: i + 1, code: `VAV-${1 + (i >> 5)}-${i & 31}`, name: "" }));
  const names = zones.flatMap(({ code }) => Array.from({ length: 40 }, (_, k) => `B1/${code}/ZN-T${k}`));
  const basis = proposalBasis(zones, [], names);
  const proposals = names.map((name) => proposeByBasis(name, basis));
  expect(proposals).toHaveLength(8000);
  expect(new Set(proposals.map((each) => each.zoneId)).size).toBe(200);
});
