import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, test } from "vitest";
import { dayOfKey } from "@/lib/importers/trend-csv/date-order";
import { formatUtc } from "@/lib/importers/trend-csv/format-utc";
import { readTrendFile } from "@/lib/importers/trend-csv/read-trend-file";
import { AMBIGUOUS, NONEXISTENT, REPEATED, RESOLVED, resolveLocal } from "@/lib/importers/trend-csv/resolve-local";
import { readDate, readOffset, readTime } from "@/lib/importers/trend-csv/stamp-parts";
import { zoneWords } from "@/lib/importers/trend-csv/zone-words";
import { zoneTable } from "@/lib/time/zone-table";

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const two = (value: number): string => String(value).padStart(2, "0");
const ZONES = [
  "America/New_York",
  "Europe/Berlin",
  "Australia/Sydney",
  "Australia/Lord_Howe",
  "America/Phoenix",
  "Asia/Kolkata",
];

/** Any minute of 1995-2045 as a wall-clock time. */
const wallClock = fc
  .integer({ min: 0, max: 50 * 365 * 1440 })
  .map((minutes) => Temporal.PlainDateTime.from("1995-01-01T00:00").add({ minutes }));

describe("stamps read against Temporal", () => {
  test("every way of writing a date gives its day", () => {
    fc.assert(
      fc.property(wallClock, (at) => {
        const { year, month, day } = at;
        const days = Temporal.PlainDate.from("1970-01-01").until(at.toPlainDate()).days;
        const dayOf = (text: string, order: "mdy" | "dmy" | "written"): number | null => {
          const parts = readDate(text);
          return parts && dayOfKey(parts.key, order);
        };
        expect(dayOf(`${year}-${two(month)}-${two(day)}`, "written")).toBe(days);
        expect(dayOf(`${year}/${month}/${day}`, "written")).toBe(days);
        expect(dayOf(`${year}${two(month)}${two(day)}`, "written")).toBe(days);
        expect(dayOf(`${month}/${day}/${year}`, "mdy")).toBe(days);
        expect(dayOf(`${two(day)}.${two(month)}.${year}`, "dmy")).toBe(days);
        expect(dayOf(`${month}/${day}/${two(year % 100)}`, "mdy")).toBe(days);
        expect(dayOf(`${two(day)}-${MONTHS[month - 1]}-${two(year % 100)}`, "written")).toBe(days);
        expect(dayOf(`${MONTHS[month - 1]} ${day}, ${year}`, "written")).toBe(days);
      }),
    );
  });

  test("24-hour and 12-hour clocks give the same second of the day", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 86399 }), (second) => {
        const [hour, minute, rest] = [Math.floor(second / 3600), Math.floor(second / 60) % 60, second % 60];
        expect(readTime(`${hour}:${two(minute)}:${two(rest)}`)?.seconds).toBe(second);
        const half = `${hour % 12 === 0 ? 12 : hour % 12}:${two(minute)}:${two(rest)}`;
        expect(readTime(`${half} ${hour < 12 ? "AM" : "PM"}`)?.seconds).toBe(second);
        expect(readTime(`${half} ${hour < 12 ? "a.m." : "p.m."}`)?.seconds).toBe(second);
      }),
    );
  });

  test("a local time means what Temporal says, in zones with and without daylight time", () => {
    fc.assert(
      fc.property(wallClock, fc.constantFrom(...ZONES), (at, timeZone) => {
        const local = at.toZonedDateTime("UTC").epochMilliseconds / 1000;
        const one = (locals: number[]) =>
          resolveLocal(
            { local: Float64Array.from(locals), offset: new Float64Array(locals.length).fill(Number.NaN) },
            zoneTable(timeZone),
            undefined,
            false,
          );
        const earlier = at.toZonedDateTime(timeZone, { disambiguation: "earlier" });
        const later = at.toZonedDateTime(timeZone, { disambiguation: "later" });
        const { utc, state } = one([local]);
        if (earlier.epochMilliseconds === later.epochMilliseconds) {
          expect(state[0]).toBe(RESOLVED);
          expect(utc[0]).toBe(earlier.epochMilliseconds / 1000);
        } else if (earlier.toPlainDateTime().equals(at)) {
          expect(state[0]).toBe(AMBIGUOUS);
          const both = one([local, local]);
          expect([...both.state]).toEqual([REPEATED, REPEATED]);
          expect([...both.utc]).toEqual([earlier.epochMilliseconds / 1000, later.epochMilliseconds / 1000]);
        } else {
          expect(state[0]).toBe(NONEXISTENT);
        }
      }),
      { numRuns: 400 },
    );
  });

  test("the hours that clocks repeat and skip are met, not only sought at random", () => {
    const zone = zoneTable("America/New_York");
    const at = (text: string): number => Date.parse(`${text}Z`) / 1000;
    const stamps = (...texts: string[]) => ({
      local: Float64Array.from(texts.map(at)),
      offset: new Float64Array(texts.length).fill(Number.NaN),
    });
    expect(resolveLocal(stamps("2026-11-01T01:30", "2026-11-01T01:30"), zone, undefined, true).utc).toEqual(
      Float64Array.of(at("2026-11-01T06:30"), at("2026-11-01T05:30")),
    );
    expect(resolveLocal(stamps("2026-03-08T02:30"), zone, undefined, false).state[0]).toBe(NONEXISTENT);
    expect(resolveLocal(stamps("2026-07-06T08:00"), zone, "standard-time-all-year", false).utc[0]).toBe(
      at("2026-07-06T13:00"),
    );
  });

  test("an instant is written as Temporal writes it", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4e9 }), (seconds) => {
        expect(formatUtc(seconds)).toBe(Temporal.Instant.fromEpochMilliseconds(seconds * 1000).toString());
      }),
    );
  });
});

describe("what is not a date or a time", () => {
  test.each(["31/31/2026", "2026-13-01", "2026-02-30", "0/1/2026", "72.4", "Total", "1/2/3/4", "30-Feb-26"])(
    "%s",
    (text) => {
      expect(readDate(text)).toBeNull();
    },
  );
  test.each(["9:1", "25:00", "24:01", "13:00 PM", "0:30 AM", "12:60", "noon"])("%s", (text) => {
    expect(readTime(text)).toBeNull();
  });
  test("24:00 is the end of the day", () => expect(readTime("24:00")?.seconds).toBe(86400));
});

describe("zone words", () => {
  test("only the zone's own words are understood", () => {
    const newYork = zoneWords("America/New_York");
    expect(readOffset("EDT", newYork)).toBe(-4 * 3600);
    expect(readOffset("EST", newYork)).toBe(-5 * 3600);
    expect(readOffset("CST", newYork)).toBeNull();
    expect(readOffset("CST", zoneWords("America/Chicago"))).toBe(-6 * 3600);
    expect(readOffset("CEST", zoneWords("Europe/Berlin"))).toBe(2 * 3600);
    expect(readOffset("AEDT", zoneWords("Australia/Sydney"))).toBe(11 * 3600);
    expect(readOffset("+05:30", newYork)).toBe(19800);
    expect(readOffset("-0500", newYork)).toBe(-18000);
    expect(readOffset("Z", newYork)).toBe(0);
  });

  test("a file whose zone words are another zone's is refused, naming both", async () => {
    const text = "Time,ZN-T (°F)\n06-Jul-26 8:00:00 AM CDT,72.4\n06-Jul-26 8:15:00 AM CDT,72.1\n";
    const { refusal } = await readTrendFile({
      fileName: "a.csv",
      bytes: new TextEncoder().encode(text),
      timeZone: "America/New_York",
    });
    expect(refusal?.code).toBe("zone-word-unknown");
    expect(refusal?.sentence).toMatch(/CDT.*America\/New_York/);
  });
});
