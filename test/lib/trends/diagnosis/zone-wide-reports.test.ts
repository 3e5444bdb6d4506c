import { describe, expect, it } from "vitest";
import type { ZoneDiagnosis } from "@/lib/trends/diagnosis/diagnose-zone";
import type { ZoneEvidence } from "@/lib/trends/diagnosis/zone-evidence";
import { diagnoseScenario, report } from "../../../support/zone-scenario";

const codes = (diagnosis: ZoneDiagnosis): string[] => diagnosis.causes.map((each) => each.code);

describe("reports and luck", () => {
  const hot = (desks: string) => [...desks].map((desk) => report(desk, 2, 23.3));
  const cold = (desks: string, zoneAirTempC = 22.6) => [...desks].map((desk) => report(desk, -2, zoneAirTempC));
  const verdictOf = (reports: ReturnType<typeof hot>, more: Partial<ZoneEvidence> = {}) =>
    diagnoseScenario(() => ({}), { reports, ...more }).verdict;

  it("seven hot reports and no cold one are a hot zone, six are not", () => {
    // By luck: 1 in 128 and 1 in 64.
    expect(verdictOf(hot("ABCDEFG"))).toBe("too-hot");
    expect(verdictOf(hot("ABCDEF"))).toBe("healthy");
  });

  it("cold reports weigh against hot ones", () => {
    // 10 of 11 by luck: 0.6 %; 10 of 12: 1.9 %.
    expect(verdictOf([...hot("AABBCCDDEE"), ...cold("F")])).toBe("too-hot");
    expect(verdictOf([...hot("AABBCCDDEE"), ...cold("FG")])).toBe("healthy");
  });

  it("one person's many reports are not the zone's", () => {
    expect(verdictOf(hot("AAAAAAAA"))).toBe("healthy");
    expect(verdictOf(hot("AAAAAAAAB"))).toBe("healthy");
    expect(verdictOf(hot("AAAAAABCDE"))).toBe("too-hot");
  });

  it("a handful from many desks over a long time does not matter", () => {
    const years = (reportYears: number) => verdictOf(hot("ABCDEFG"), { deskCount: 14, reportYears });
    expect(years(1)).toBe("too-hot");
    expect(years(1.01)).toBe("healthy");
    expect(verdictOf(hot("ABCDEFG"), { deskCount: 0, reportYears: 50 })).toBe("too-hot");
  });

  it("reports of the heating season say nothing of cooling", () => {
    const winter = (reports: ReturnType<typeof hot>) => reports.map((each) => ({ ...each, inCoolingSeason: false }));
    expect(verdictOf(winter(hot("ABCDEFG")))).toBe("healthy");
    expect(verdictOf([...hot("ABCDEFG"), ...winter(cold("ABC"))])).toBe("too-hot");
    const coldZone = cold("ABCDEFG");
    expect(verdictOf(coldZone)).not.toBe("healthy");
    expect(verdictOf(winter(coldZone))).toBe("healthy");
  });

  it("a zone that all its air cannot hold is too hot without anyone saying so", () => {
    const short = { zoneAirTempC: 24.3, airflowM3ps: 0.4, damperPct: 100 };
    const diagnosis = diagnoseScenario(() => short);
    expect(diagnosis.verdict).toBe("too-hot");
    expect(codes(diagnosis)).toEqual(["short-of-air"]);
    // An hour a day is a tenth of the time, the same without the first week is less.
    expect(diagnoseScenario(({ hour }) => (hour < 9 ? short : {})).verdict).toBe("too-hot");
    expect(diagnoseScenario(({ week, hour }) => (hour < 9 && week > 0 ? short : {})).verdict).toBe("healthy");
  });

  it("a zone that cannot hold a setpoint far below the target is not hot", () => {
    const diagnosis = diagnoseScenario(() => ({
      zoneAirTempC: 22.9,
      coolingSetpointC: 21,
      airflowM3ps: 0.4,
      damperPct: 100,
    }));
    expect(codes(diagnosis)).not.toContain("short-of-air");
    expect(diagnosis.verdict).not.toBe("too-hot");
  });
});
