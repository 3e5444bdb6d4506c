import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { localTicks } from "@/app/_components/charts/local-ticks";

const utc = (text: string): number => Date.parse(text) / 1000;
const isoOf = (t: number): string => new Date(t * 1000).toISOString().slice(0, 16);

// Changes of the clocks from the IANA time zone database: New York 2026-03-08 07:00Z and 2026-11-01 06:00Z.
describe("ticks of a time axis", () => {
  it("stand at local midnights of 24 and 25 hours when clocks go back", () => {
    const ticks = localTicks({
      from: utc("2026-10-31T04:00Z"),
      to: utc("2026-11-03T05:00Z"),
      timeZone: "America/New_York",
      maxTicks: 4,
    });
    expect(ticks.map(({ t }) => isoOf(t))).toEqual([
      "2026-10-31T04:00",
      "2026-11-01T04:00",
      "2026-11-02T05:00",
      "2026-11-03T05:00",
    ]);
    expect(ticks.map(({ label }) => label)).toEqual(["31 Oct", "1 Nov", "2 Nov", "3 Nov"]);
  });

  it("leave out the hour that clocks skip and take the first of the one they repeat", () => {
    const hours = (day: string, next: string) =>
      localTicks({ from: utc(day), to: utc(next), timeZone: "America/New_York", maxTicks: 30 });
    const spring = hours("2026-03-08T05:00Z", "2026-03-09T03:59Z");
    expect(spring.map(({ label }) => label).slice(0, 4)).toEqual(["Sun 8 Mar", "01:00", "03:00", "04:00"]);
    expect(spring).toHaveLength(23);
    const autumn = hours("2026-11-01T04:00Z", "2026-11-02T04:59Z");
    expect(autumn.filter(({ label }) => label === "01:00").map(({ t }) => isoOf(t))).toEqual(["2026-11-01T05:00"]);
    expect(autumn).toHaveLength(24);
  });

  it.each(["America/New_York", "Australia/Lord_Howe", "Africa/Cairo", "Asia/Beirut", "Asia/Kolkata", "Europe/Berlin"])(
    "agree with Temporal in %s through a year",
    (timeZone) => {
      const from = Temporal.PlainDate.from("2026-01-01").toZonedDateTime(timeZone).epochMilliseconds / 1000;
      const ticks = localTicks({ from, to: from + 364 * 86400, timeZone, maxTicks: 365 });
      expect(ticks.length).toBeGreaterThan(360);
      for (const { t } of ticks) {
        const there = Temporal.Instant.fromEpochMilliseconds(t * 1000).toZonedDateTimeISO(timeZone);
        expect([there.hour, there.minute, there.second]).toEqual([0, 0, 0]);
      }
    },
  );

  it("start weeks on Monday and never crowd", () => {
    const from = utc("2026-05-01T00:00Z");
    const ticks = localTicks({ from, to: utc("2026-09-30T00:00Z"), timeZone: "UTC", maxTicks: 24 });
    expect(ticks.every(({ t }) => new Date(t * 1000).getUTCDay() === 1)).toBe(true);
    expect(ticks.length).toBeLessThanOrEqual(24);
  });
});
