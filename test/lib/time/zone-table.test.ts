import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { isTimeZone, zoneTable } from "@/lib/time/zone-table";

const ZONES = [
  "America/New_York",
  "Europe/Berlin",
  "Australia/Lord_Howe",
  "America/Phoenix",
  "Asia/Kolkata",
  "Europe/Dublin",
  "Africa/Casablanca",
  "America/Sao_Paulo",
  "Pacific/Apia",
  "UTC",
];
const FROM = Date.UTC(1990, 0, 2) / 1000;
const TO = Date.UTC(2049, 11, 30) / 1000;

const offsetByTemporal = (zone: string, utc: number): number =>
  Temporal.Instant.fromEpochMilliseconds(utc * 1000).toZonedDateTimeISO(zone).offsetNanoseconds / 1e9;

/** What a wall-clock reading means, by Temporal. */
function meaningByTemporal(zone: string, local: number) {
  const { year, month, day, hour, minute, second } = Temporal.Instant.fromEpochMilliseconds(
    local * 1000,
  ).toZonedDateTimeISO("UTC");
  const plain = Temporal.PlainDateTime.from({ year, month, day, hour, minute, second });
  const at = (disambiguation: "earlier" | "later"): Temporal.ZonedDateTime =>
    plain.toZonedDateTime(zone, { disambiguation });
  const [earlier, later] = [at("earlier"), at("later")];
  const [first, second_] = [earlier.epochMilliseconds / 1000, later.epochMilliseconds / 1000];
  if (first === second_) return { status: "unique", utcSeconds: first };
  if (earlier.toPlainDateTime().equals(plain)) {
    return { status: "repeated", firstUtcSeconds: first, secondUtcSeconds: second_ };
  }
  return { status: "missing", shiftedUtcSeconds: second_ };
}

/** Instants at which a zone's offset changes, 2005 to 2040. */
function transitions(zone: string): number[] {
  const found: number[] = [];
  let at: Temporal.ZonedDateTime | null = Temporal.ZonedDateTime.from(`2005-01-01T00:00[${zone}]`);
  while (at && at.year < 2041) {
    at = at.getTimeZoneTransition("next");
    if (at && at.year < 2041) found.push(at.epochMilliseconds / 1000);
  }
  return found;
}

describe.each(ZONES)("zone table of %s", (zone) => {
  const table = zoneTable(zone);

  it("gives Temporal's offset at any instant", () => {
    fc.assert(
      fc.property(fc.integer({ min: FROM, max: TO }), (utc) => {
        expect(table.offsetAt(utc)).toBe(offsetByTemporal(zone, utc));
        expect(table.localFromUtc(utc)).toBe(utc + table.offsetAt(utc));
      }),
      { numRuns: 150 },
    );
  });

  it("changes offset in the very second that Temporal does", () => {
    for (const utc of transitions(zone)) {
      for (const each of [utc - 1, utc]) expect(table.offsetAt(each)).toBe(offsetByTemporal(zone, each));
    }
  });

  it("reads wall clocks as Temporal does, repeated and missing hours included", () => {
    for (const utc of transitions(zone)) {
      const wall = utc + offsetByTemporal(zone, utc - 1);
      for (const shift of [-86_400, -7200, -3600, -1800, -1, 0, 900, 1799, 1800, 3599, 3600, 7200, 86_399, 86_400]) {
        expect(table.utcFromLocal(wall + shift), `${zone} ${wall + shift}`).toEqual(
          meaningByTemporal(zone, wall + shift),
        );
      }
    }
    fc.assert(
      fc.property(fc.integer({ min: FROM, max: TO }), (local) => {
        expect(table.utcFromLocal(local)).toEqual(meaningByTemporal(zone, local));
      }),
      { numRuns: 100 },
    );
  });

  it("spans of one offset hold one instant for each reading, and are missing where a reading has none or two", () => {
    fc.assert(
      fc.property(fc.integer({ min: FROM, max: TO }), fc.double({ min: 0, max: 1, noNaN: true }), (local, share) => {
        const span = table.uniqueSpanAt(local);
        if (!span) return expect(table.utcFromLocal(local).status).not.toBe("unique");
        const [from, to] = [Math.max(span.from, FROM), Math.min(span.to - 1, TO)];
        expect(local >= from && local <= to).toBe(true);
        for (const each of [from, Math.floor(from + share * (to - from)), to])
          expect(table.utcFromLocal(each)).toEqual({ status: "unique", utcSeconds: each - span.offset });
      }),
      { numRuns: 100 },
    );
  });
});

describe("wall clocks of known days", () => {
  const local = (...at: [number, number, number, number, number]): number =>
    Date.UTC(at[0], at[1] - 1, ...at.slice(2)) / 1000;

  it("finds two instants when clocks go back in New York on 1 November 2026", () => {
    expect(zoneTable("America/New_York").utcFromLocal(local(2026, 11, 1, 1, 30))).toEqual({
      status: "repeated",
      firstUtcSeconds: Date.UTC(2026, 10, 1, 5, 30) / 1000,
      secondUtcSeconds: Date.UTC(2026, 10, 1, 6, 30) / 1000,
    });
  });

  it("finds none when clocks go forward in Berlin on 29 March 2026", () => {
    expect(zoneTable("Europe/Berlin").utcFromLocal(local(2026, 3, 29, 2, 30)).status).toBe("missing");
  });

  it("repeats half an hour only on Lord Howe Island", () => {
    const zone = zoneTable("Australia/Lord_Howe");
    expect(zone.utcFromLocal(local(2026, 4, 5, 1, 45)).status).toBe("repeated");
    expect(zone.utcFromLocal(local(2026, 4, 5, 1, 15)).status).toBe("unique");
  });

  it("never changes clocks in Phoenix or Kolkata", () => {
    expect(transitions("America/Phoenix")).toEqual([]);
    expect(zoneTable("Asia/Kolkata").offsetAt(Date.UTC(2026, 6, 1) / 1000)).toBe(19_800);
  });

  it("tells zone names from other words", () => {
    expect(isTimeZone("America/New_York")).toBe(true);
    expect(isTimeZone("America/Springfield")).toBe(false);
    expect(() => zoneTable("Nowhere/Land")).toThrow(RangeError);
  });
});
