import { describe, expect, it } from "vitest";
import { heldSeries, seriesTotals } from "@/lib/electrical/plug-log/plug-series";
import type { PlugLogAnswers } from "@/lib/importers/plug-log/plug-quantity";
import { readPlugLog } from "@/lib/importers/plug-log/read-plug-log";
import { NO_ANSWERS, OFFICE } from "@/test/lib/electrical/plug-log/plug-log-office";

const bytesOf = (...lines: string[]) => new TextEncoder().encode(`${lines.join("\n")}\n`);
const read = (lines: string[], answers: Partial<PlugLogAnswers> = {}) =>
  readPlugLog({ bytes: bytesOf(...lines) }, { zone: OFFICE.zone, voltageV: 120 }, { ...NO_ANSWERS, ...answers });

function taken(lines: string[], answers: Partial<PlugLogAnswers> = {}) {
  const result = read(lines, answers);
  if (result.status !== "ok") throw new Error(result.message);
  return { ...result, totals: seriesTotals(heldSeries(result.tsUtcSeconds, result.powerW)) };
}

describe("files of plug loggers", () => {
  it("reads kilowatts with a decimal comma between semicolons", () => {
    const log = taken(["Date time;Power (kW)", "2025-07-01 10:00;1,500", "2025-07-01 10:15;0,750"]);
    expect([...log.powerW]).toEqual([1500, 750]);
    expect(log.totals.energyKwh).toBeCloseTo(0.5625, 9);
  });

  it("makes watts of amperes at the building's voltage, and says so", () => {
    const log = taken(["timestamp,current_A", "2025-07-01 10:00:00,12.5", "2025-07-01 10:01:00,0"]);
    expect([...log.powerW]).toEqual([1500, 0]);
    expect(log.findings[0]).toMatchObject({ code: "power-from-current", evidence: { voltageV: 120 } });
  });

  it("asks whether energy that never falls is a running total, and reads it either way", () => {
    const lines = ["Time,Energy (kWh)", "2025-07-01 10:00,0.1", "2025-07-01 11:00,0.4", "2025-07-01 12:00,0.9"];
    expect(read(lines)).toMatchObject({ status: "ask", question: "energy" });
    expect(taken(lines, { energy: "counter" }).totals.energyKwh).toBeCloseTo(0.8, 9);
    expect(taken(lines, { energy: "step" }).totals.energyKwh).toBeCloseTo(1.4, 9);
  });

  it("leaves out the step in which a running total was set to nothing", () => {
    const log = taken(
      [
        "Time,Energy (Wh)",
        "2025-07-01 10:00,900",
        "2025-07-01 11:00,1000",
        "2025-07-01 12:00,50",
        "2025-07-01 13:00,70",
      ],
      { energy: "counter" },
    );
    expect(log.totals.energyKwh).toBeCloseTo(0.12, 9);
    expect(log.findings).toContainEqual(expect.objectContaining({ code: "counter-went-back" }));
  });

  it("takes date and time from columns of their own, and power beside running energy", () => {
    const log = taken([
      "Exported by logger 7",
      "Date,Time,Voltage (V),Energy (kWh),Power (W)",
      "31/07/2025,23:59:30,119,1.1,700",
      "01/08/2025,00:00:30,119,1.2,720",
    ]);
    expect([...log.powerW]).toEqual([700, 720]);
    expect((log.tsUtcSeconds[1] as number) - (log.tsUtcSeconds[0] as number)).toBe(60);
    expect(log.rows).toEqual({ inFile: 4, accepted: 2, repaired: 0, rejected: 0, ignored: 2 });
  });

  it("reads the hour that is repeated when clocks go back by the order of the file", () => {
    // 2 November 2025, 02:00 CDT becomes 01:00 CST: the hour from 01:00 is there twice.
    const stamps = ["00:30", "01:00", "01:30", "01:00", "01:30", "02:00"];
    const log = taken(["Time,W", ...stamps.map((time) => `2025-11-02 ${time},100`)]);
    const steps = [...log.tsUtcSeconds].map((ts) => (ts - (log.tsUtcSeconds[0] as number)) / 60);
    expect(steps).toEqual([0, 30, 60, 90, 120, 150]);
    expect(log.findings).toEqual([]);
  });

  it("rejects rows that cannot be read, by line, and takes the others", () => {
    const log = taken([
      "Time,W",
      "2025-07-01 10:00,5",
      "yesterday,6",
      "2025-07-01 10:02,n/a",
      "",
      "2025-07-01 10:03,7",
    ]);
    expect(log.rows).toEqual({ inFile: 6, accepted: 2, repaired: 0, rejected: 2, ignored: 2 });
    expect(log.notes.map(({ line, fate }) => [line, fate])).toEqual([
      [3, "rejected"],
      [4, "rejected"],
      [5, "ignored"],
    ]);
  });

  it("refuses a file without times, a file that is no text, and one without readings", () => {
    expect(read(["desk,watts", "2-14,1500"])).toMatchObject({ status: "refused", code: "no-columns" });
    const pdf = readPlugLog(
      { bytes: new TextEncoder().encode("%PDF-1.7") },
      { zone: OFFICE.zone, voltageV: 120 },
      NO_ANSWERS,
    );
    expect(pdf).toMatchObject({ status: "refused", code: "not-text" });
    expect(read(["Time,W", "soon,1"])).toMatchObject({ status: "refused", code: "no-readings" });
  });

  it("counts a step of more than a minute as a gap when readings come by the second", () => {
    const log = taken([
      "Time,W",
      "2025-07-01 10:00:00,60",
      "2025-07-01 10:00:01,60",
      "2025-07-01 10:00:02,60",
      "2025-07-01 11:00:00,60",
    ]);
    expect(log.totals).toMatchObject({ gaps: 1 });
    expect(log.totals.loggedHours * 3600).toBeCloseTo(3, 9);
  });
});
