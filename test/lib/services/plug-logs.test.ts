import { describe, expect, it } from "vitest";
import { findDevice } from "@/db/queries/devices";
import { registerDevice } from "@/lib/services/devices/register";
import { importPlugLog } from "@/lib/services/plug-logs/import";
import { changePlugLogRawDays, deleteOldRawReadings } from "@/lib/services/plug-logs/raw-readings";
import { readPlugLogView } from "@/lib/services/plug-logs/read";
import { removePlugLog, reviewPlugLog, setPlugLogSeason } from "@/lib/services/plug-logs/review";
import { dayNumberFromLocalDate, localDateFromDayNumber } from "@/lib/time/civil-date";
import { heaterInput, smallOffice } from "@/test/factories/office";
import { refusalOf } from "@/test/support/refusal";

const DAY_MS = 86_400_000;
const MONDAY = dayNumberFromLocalDate("2025-06-02") as number;

/** A heater's log by the minute: 1400 W from 09:00 for some hours on each workday, else 0 W. */
function logOf(hoursByDay: readonly number[]): Uint8Array {
  const lines = ["time,power (W)"];
  hoursByDay.forEach((hours, at) => {
    const date = localDateFromDayNumber(MONDAY + at);
    for (let minute = 0; minute < 1440; minute++) {
      const clock = `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;
      lines.push(`${date} ${clock},${minute >= 540 && minute < 540 + hours * 60 ? 1400 : 0}`);
    }
  });
  return new TextEncoder().encode(lines.join("\n"));
}

const WEEKS = [2, 3, 1, 2, 2, 0, 0, 3, 2, 1, 2, 2, 0, 0];

async function logged(hoursByDay = WEEKS) {
  const office = smallOffice();
  const { ctx, buildingId } = office;
  const deviceId = registerDevice(ctx, buildingId, heaterInput());
  const bytes = logOf(hoursByDay);
  const outcome = await importPlugLog(ctx, buildingId, deviceId, { name: "logger.csv", bytes });
  if (outcome.state !== "imported") throw new Error(outcome.message);
  return { ...office, deviceId, bytes, logId: outcome.logId };
}

describe("plug logs of a device", () => {
  it("keeps figures and days, and the file for review only", async () => {
    const { ctx, buildingId, deviceId, logId } = await logged();
    const { log } = readPlugLogView(ctx, buildingId, deviceId, logId);
    // By hand: 20 h at 1400 W.
    expect(log.energyKwh).toBeCloseTo(28, 9);
    expect(log.figures.days.map((day) => day.energyKwh)).toEqual(WEEKS.map((hours) => expect.closeTo(hours * 1.4, 9)));
    expect(log.figures.states.at(-1)).toMatchObject({ setting: { name: "high-heat" } });
    expect(ctx.uploads.read(log.sha256)).not.toBeNull();
  });

  it("changes nothing when the same file comes again, and asks what a file does not say", async () => {
    const { ctx, buildingId, deviceId, bytes, logId } = await logged();
    expect(await importPlugLog(ctx, buildingId, deviceId, { name: "again.csv", bytes })).toMatchObject({
      state: "unchanged",
      logId,
    });
    const bare = new TextEncoder().encode("2025-07-01 10:00;5\n2025-07-01 10:01;6\n");
    expect(await importPlugLog(ctx, buildingId, deviceId, { name: "bare.csv", bytes: bare })).toMatchObject({
      state: "ask",
      question: "unit",
    });
  });

  it("deletes raw readings after the building's days and keeps the figures", async () => {
    const { ctx, buildingId, deviceId, logId } = await logged();
    const { sha256 } = readPlugLogView(ctx, buildingId, deviceId, logId).log;
    expect(deleteOldRawReadings({ ...ctx, now: ctx.now + 30 * DAY_MS - 1 })).toBe(0);
    expect(ctx.uploads.read(sha256)).not.toBeNull();
    expect(deleteOldRawReadings({ ...ctx, now: ctx.now + 30 * DAY_MS })).toBe(1);
    expect(ctx.uploads.read(sha256)).toBeNull();
    const { log } = readPlugLogView(ctx, buildingId, deviceId, logId);
    expect(log).toMatchObject({ rawDeletedAtMs: ctx.now + 30 * DAY_MS, energyKwh: expect.closeTo(28, 9) });
    expect(log.figures.days.map((day) => day.date)).toEqual(WEEKS.map(() => null));
    expect(log.figures.days.reduce((sum, day) => sum + day.energyKwh, 0)).toBeCloseTo(28, 9);
    expect(JSON.stringify(log.figures)).not.toContain("2025-06");
    expect(deleteOldRawReadings({ ...ctx, now: ctx.now + 60 * DAY_MS })).toBe(0);
  });

  it("deletes them at once when a building keeps them for no time", async () => {
    const { ctx, buildingId, deviceId, logId } = await logged();
    changePlugLogRawDays(ctx, buildingId, { plugLogRawDays: 0 });
    expect(readPlugLogView(ctx, buildingId, deviceId, logId).log.rawDeletedAtMs).toBe(ctx.now);
    expect((await refusalOf(() => changePlugLogRawDays(ctx, buildingId, { plugLogRawDays: 400 }))).code).toBe(
      "invalid",
    );
  });

  it("takes hours, duty and the longest run over into the register, scaled to the season", async () => {
    const { ctx, buildingId, deviceId, logId } = await logged();
    expect((await refusalOf(() => reviewPlugLog(ctx, buildingId, deviceId, logId, { takeOver: true }))).code).toBe(
      "precondition",
    );
    setPlugLogSeason(ctx, buildingId, deviceId, logId, { standsFrom: "2025-06-02", standsTo: "2025-06-29" });
    reviewPlugLog(ctx, buildingId, deviceId, logId, { takeOver: true });
    const device = findDevice(ctx.db, buildingId, deviceId);
    // 20 workdays at 2 h by hand; the four days off that were logged are too few, and not counted.
    expect(device?.settings[0]).toMatchObject({
      hoursPerYear: expect.closeTo(40, 6),
      dutyFraction: 1,
      useBasis: "plug-logger",
    });
    expect(device?.longestRunHours).toBeCloseTo(3, 9);
    const { log } = readPlugLogView(ctx, buildingId, deviceId, logId);
    expect(log).toMatchObject({ reviewedBy: "Robin Vale", rawDeletedAtMs: ctx.now });
    expect(ctx.uploads.read(log.sha256)).toBeNull();
  });

  it("stands for the same season without the dates of its days, but for none that leaves out some of them", async () => {
    const { ctx, buildingId, deviceId, logId } = await logged();
    const season = (standsFrom: string, standsTo: string) => {
      setPlugLogSeason(ctx, buildingId, deviceId, logId, { standsFrom, standsTo });
      return readPlugLogView(ctx, buildingId, deviceId, logId).log.season;
    };
    const before = season("2025-06-01", "2025-08-31");
    expect(before?.status).toBe("ok");
    deleteOldRawReadings({ ...ctx, now: ctx.now + 31 * DAY_MS });
    const after = season("2025-06-01", "2025-08-31");
    if (before?.status !== "ok" || after?.status !== "ok") throw new Error("no season");
    expect(after.energyKwh.value).toBeCloseTo(before.energyKwh.value, 9);
    expect(season("2025-06-09", "2025-08-31")).toMatchObject({ status: "refused", code: "dates-deleted" });
  });

  it("says why a short log stands for no season, and takes nothing over from it", async () => {
    const { ctx, buildingId, deviceId, logId } = await logged([2, 2, 2, 2]);
    setPlugLogSeason(ctx, buildingId, deviceId, logId, { standsFrom: "2025-06-01", standsTo: "2025-08-31" });
    const { log } = readPlugLogView(ctx, buildingId, deviceId, logId);
    expect(log.season).toMatchObject({ status: "refused", code: "short-log" });
    expect(
      (await refusalOf(() => reviewPlugLog(ctx, buildingId, deviceId, logId, { takeOver: true }))).message,
    ).toContain("4 whole days");
    expect(findDevice(ctx.db, buildingId, deviceId)?.settings[0]?.useBasis).toBe("entered");
  });

  it("takes a log out again with its file", async () => {
    const { ctx, buildingId, deviceId, logId } = await logged();
    const { sha256 } = readPlugLogView(ctx, buildingId, deviceId, logId).log;
    removePlugLog(ctx, buildingId, deviceId, logId);
    expect(ctx.uploads.read(sha256)).toBeNull();
    expect((await refusalOf(() => readPlugLogView(ctx, buildingId, deviceId, logId))).code).toBe("not-found");
  });

  it("refuses who is not signed in, an empty file and a damaged archive", async () => {
    const { ctx, buildingId, deviceId } = await logged();
    const anonymous = { ...ctx, actor: { kind: "anonymous" as const } };
    const file = (bytes: number[]) => ({ name: "log.gz", bytes: Uint8Array.from(bytes) });
    await expect(importPlugLog(anonymous, buildingId, deviceId, file([1]))).rejects.toThrow("Sign in");
    await expect(importPlugLog(ctx, buildingId, deviceId, file([]))).rejects.toThrow("empty");
    await expect(importPlugLog(ctx, buildingId, deviceId, file([0x1f, 0x8b, 8, 0]))).rejects.toThrow("damaged");
  });
});
