import { describe, expect, it } from "vitest";
import { formatLocal, formatLocalDate } from "@/lib/time/format";

describe("instants as printed", () => {
  const firstHalfPastOne = Date.UTC(2026, 10, 1, 5, 30);

  it("are on the building's wall clock", () => {
    const instant = Date.UTC(2026, 6, 4, 22, 5);
    expect(formatLocal(instant, "America/New_York", "date-time")).toBe("4 Jul 2026, 18:05");
    expect(formatLocal(instant, "Asia/Kolkata", "date")).toBe("5 Jul 2026");
    expect(formatLocal(instant, "Europe/Berlin", "time")).toBe("00:05");
  });

  it("tell the two readings of a repeated hour apart where the zone is shown", () => {
    const zone = "America/New_York";
    const hour = 3_600_000;
    expect(formatLocal(firstHalfPastOne, zone, "date-time")).toBe(
      formatLocal(firstHalfPastOne + hour, zone, "date-time"),
    );
    expect(formatLocal(firstHalfPastOne, zone, "date-time-zone")).toBe("1 Nov 2026, 01:30 EDT");
    expect(formatLocal(firstHalfPastOne + hour, zone, "date-time-zone")).toBe("1 Nov 2026, 01:30 EST");
  });

  it("print a calendar date whatever the zone of the machine", () => {
    expect(formatLocalDate("2026-11-01")).toBe("1 Nov 2026");
    expect(formatLocalDate("2026-02-30")).toBe("2026-02-30");
  });
});
