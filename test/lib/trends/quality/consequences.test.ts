import { describe, expect, it } from "vitest";
import type { Finding } from "@/lib/findings/finding";
import type { Verdict, ZoneDiagnosis } from "@/lib/trends/diagnosis/diagnose-zone";
import type { CauseCode } from "@/lib/trends/diagnosis/zone-evidence";
import { consequenceSummary, consequenceWords } from "@/lib/trends/quality/consequence-words";
import { consequencesOf, severityOf, type ZoneStanding } from "@/lib/trends/quality/consequences";
import { QUALITY_FINDING_CODES, qualityFindingWords } from "@/lib/trends/quality/findings";

const finding = (
  code: string,
  evidence: Finding["evidence"] = {},
  severity: Finding["severity"] = "note",
): Finding => ({
  code,
  severity,
  evidence,
});
const diagnosis = (verdict: Verdict, causes: readonly CauseCode[] = []): ZoneDiagnosis => ({
  verdict,
  causes: causes.map((code) => ({ code, severity: "caution", evidence: {} })),
  missingPoints: [],
  raisingSetpointHelps: "unknown",
});
const standing = (changes: Partial<ZoneStanding> = {}): ZoneStanding => ({
  diagnosis: diagnosis("healthy"),
  blind: [],
  leftOutOfCost: false,
  splitHours: 0,
  ...changes,
});

describe("what a problem stops", () => {
  it("is nothing where the diagnosis judged all the same, and says so", () => {
    const missing = finding("trend-missing", { point: "airflow" });
    expect(consequencesOf(missing, standing())).toEqual([]);
    expect(consequenceWords(missing, [])).toMatch(/^Disqualifies nothing: /);
    expect(consequenceSummary([])).toBe("nothing");
    expect(consequencesOf(finding("sensor-stuck", { point: "zone-air-temp" }), standing())).toEqual([]);
  });

  it("is the verdict of a zone only where the diagnosis gave none for want of that trend", () => {
    const blind = [{ code: "setpoint-too-low" as const, lacks: ["airflow" as const] }];
    const of = (point: string, verdict: Verdict) =>
      consequencesOf(
        finding("trend-missing", { point }),
        standing({ blind, diagnosis: diagnosis(verdict), splitHours: 12 }),
      );
    expect(of("airflow", "undetermined")).toEqual([
      { kind: "rules", codes: ["setpoint-too-low"] },
      { kind: "verdict" },
      { kind: "hours-split", hours: 12 },
    ]);
    expect(of("airflow", "healthy").map(({ kind }) => kind)).toEqual(["rules", "hours-split"]);
    expect(of("damper-position", "undetermined")).toEqual([]);
  });

  it("is the cost only where the cost leaves the zone out", () => {
    const short = finding("record-too-short", {}, "disqualifies");
    expect(consequencesOf(short, standing({ leftOutOfCost: true }))).toEqual([{ kind: "cost" }]);
    expect(consequencesOf(short, standing())).toEqual([]);
    expect(severityOf(short, [])).toBe("caution");
    expect(consequencesOf(finding("zone-air-missing"), standing({ diagnosis: null, leftOutOfCost: true }))).toEqual([
      { kind: "verdict" },
      { kind: "cost" },
    ]);
  });

  it("is every proposal where a suspect sensor is the only fault, and is not claimed beside another", () => {
    const bias = finding("sensor-bias", {}, "caution");
    const of = (...codes: CauseCode[]) =>
      consequencesOf(bias, standing({ diagnosis: diagnosis("fault-first", ["sensor-bias", ...codes]) }));
    expect(of()).toEqual([{ kind: "levers" }]);
    expect(of("reheat-valve-leaking")).toEqual([]);
    expect(consequencesOf(bias, standing())).toEqual([]);
  });

  it("weighs a problem: a verdict or the cost most, a blind rule a caution, else the finding itself", () => {
    const note = finding("trend-missing", { point: "airflow" });
    expect(severityOf(note, [{ kind: "verdict" }])).toBe("disqualifies");
    expect(severityOf(note, [{ kind: "rules", codes: ["short-of-air"] }])).toBe("caution");
    expect(severityOf(note, [{ kind: "hours-split", hours: 3 }])).toBe("note");
    expect(severityOf(note, [])).toBe("note");
  });

  it("is said in one sentence, and in a few words for a table", () => {
    const consequences = [
      { kind: "rules" as const, codes: ["short-of-air" as const, "setpoint-too-low" as const] },
      { kind: "verdict" as const },
      { kind: "hours-split" as const, hours: 12.4 },
    ];
    expect(consequenceWords(finding("trend-missing"), consequences)).toBe(
      "Cannot be judged: short of air, setpoint too low; the zone has no verdict, or an undetermined one; 12 h of undetermined state are split by assumption in the cost.",
    );
    expect(consequenceSummary(consequences)).toBe("2 causes not judged, no verdict, 12 h split by assumption");
  });
});

describe("sentences of the quality findings", () => {
  it("exist for every code, and refuse one that is not theirs", () => {
    expect(QUALITY_FINDING_CODES).toHaveLength(12);
    for (const code of QUALITY_FINDING_CODES)
      expect(qualityFindingWords(finding(code, { point: "airflow" })).what.length, code).toBeGreaterThan(10);
    expect(() => qualityFindingWords(finding("made-up"))).toThrow(/made-up/);
  });

  it("give temperatures in the building's unit and instants on its clock", () => {
    const { what } = qualityFindingWords(
      finding("sensor-stuck", {
        point: "zone-air-temp",
        valueC: 22,
        hours: 30,
        fromUtcSeconds: 1_719_792_000,
        toUtcSeconds: 1_719_900_000,
        compared: true,
        times: 1,
        totalHours: 30,
      }),
    );
    expect(what).toContain(
      "stood at 22.0 °C for 30 h, 1 Jul 2024, 00:00 UTC to 2 Jul 2024, 06:00 UTC, while the other zones moved",
    );
  });
});
