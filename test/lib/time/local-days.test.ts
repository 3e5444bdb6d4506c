import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { localDateOfDay, localDaysOver, localHourEdges, offsetChanges } from "@/lib/time/local-days";
import { zoneTable } from "@/lib/time/zone-table";
import wanted from "../../fixtures/trends/local-day-means.json";

describe("local days", () => {
  it.each(wanted.cases)(
    "begin and last as zoneinfo says: $timeZone from $firstDate",
    ({ timeZone, days, toUtcSeconds }) => {
      const fromUtcSeconds = days[0]?.from ?? 0;
      const found = localDaysOver(zoneTable(timeZone), { fromUtcSeconds, toUtcSeconds });
      expect([...found.edges]).toEqual([...days.map((day) => day.from), toUtcSeconds]);
      expect(days.map((_, k) => localDateOfDay(found, k))).toEqual(days.map((day) => day.date));
      const hours = localHourEdges(found);
      expect(hours.length - 1).toBe(days.reduce((sum, day) => sum + day.hours.length, 0));
      expect(hours[0]).toBe(fromUtcSeconds);
      expect(hours.at(-1)).toBe(toUtcSeconds);
    },
  );

  it("has no day in an empty span", () => {
    const days = localDaysOver(zoneTable("UTC"), { fromUtcSeconds: 86_400, toUtcSeconds: 86_400 });
    expect(days.count).toBe(0);
    expect(localHourEdges(days)).toHaveLength(0);
  });

  it("places every instant of a span in the day that its wall clock shows", () => {
    const zones = fc.constantFrom("America/New_York", "Australia/Lord_Howe", "America/Santiago", "Asia/Kolkata");
    const instants = fc.integer({ min: 1_600_000_000, max: 1_800_000_000 });
    fc.assert(
      fc.property(zones, instants, fc.integer({ min: 1, max: 40 * 86_400 }), (timeZone, from, length) => {
        const zone = zoneTable(timeZone);
        const days = localDaysOver(zone, { fromUtcSeconds: from, toUtcSeconds: from + length });
        const at = from + Math.floor(length / 2);
        const k = days.edges.findLastIndex((edge) => edge <= at);
        expect(days.firstDay + k).toBe(Math.floor(zone.localFromUtc(at) / 86_400));
        expect(days.edges[0]).toBeLessThanOrEqual(from);
        expect(days.edges[days.count]).toBeGreaterThanOrEqual(from + length);
      }),
    );
  });
});

describe("changes of a zone's offset", () => {
  it("are found at their second, with their size", () => {
    const span = { fromUtcSeconds: Date.UTC(2025, 9, 1) / 1000, toUtcSeconds: Date.UTC(2026, 9, 1) / 1000 };
    // 2 November 2025, 06:00 UTC, and 8 March 2026, 07:00 UTC.
    expect(offsetChanges(zoneTable("America/New_York"), span)).toEqual([
      { atUtcSeconds: Date.UTC(2025, 10, 2, 6) / 1000, bySeconds: -3600 },
      { atUtcSeconds: Date.UTC(2026, 2, 8, 7) / 1000, bySeconds: 3600 },
    ]);
    expect(offsetChanges(zoneTable("Australia/Lord_Howe"), span).map((each) => each.bySeconds)).toEqual([1800, -1800]);
    expect(offsetChanges(zoneTable("Asia/Kolkata"), span)).toEqual([]);
  });

  it("does not count a change at the end of the span", () => {
    const at = Date.UTC(2026, 2, 8, 7) / 1000;
    expect(offsetChanges(zoneTable("America/New_York"), { fromUtcSeconds: at - 50_000, toUtcSeconds: at })).toEqual([]);
  });
});
