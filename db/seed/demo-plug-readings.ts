import { dayNumberFromLocalDate, isoWeekday } from "@/lib/time/civil-date";
import { DEMO_HOLIDAYS, startOfLocalDate } from "./demo-calendar";
import { streamOf } from "./normal";

/** The demo's logger was in from one midnight to another: four weeks of early summer. */
export const LOGGED_FROM = "2026-06-01";
export const LOGGED_UNTIL = "2026-06-29";
const MINUTES_A_DAY = 1440;
const STANDBY_W = 0.6;
/** The thermostat lets the heat on for five minutes of eight, and the fan goes on at all times. */
const CYCLE_MINUTES = 8;
const ON_MINUTES = 5;

/** Watts of the settings as the logger meets them. */
export type LoggedSettings = { fanW: number; lowW: number; highW: number };

/**
 * A heater's readings by the minute, made for the demo: most workdays a stretch of high heat from some time after eight, on
 * some an hour of low heat after noon, and once a whole evening that somebody forgot.
 */
export function demoPlugReadings({ fanW, lowW, highW }: LoggedSettings): {
  tsUtcSeconds: Float64Array;
  powerW: Float64Array;
} {
  const random = streamOf("plug log");
  const first = dayNumberFromLocalDate(LOGGED_FROM) ?? 0;
  const count = (dayNumberFromLocalDate(LOGGED_UNTIL) ?? 0) - first;
  const start = startOfLocalDate(LOGGED_FROM);
  const holidays = new Set(DEMO_HOLIDAYS.map(({ date }) => dayNumberFromLocalDate(date)));
  const powerW = new Float64Array(count * MINUTES_A_DAY).fill(STANDBY_W);
  for (let day = 0; day < count; day++) {
    const isWorkday = isoWeekday(first + day) <= 5 && !holidays.has(first + day);
    if (!isWorkday || random() < 0.1) continue;
    const at = (minute: number): number => day * MINUTES_A_DAY + Math.round(minute);
    const wander = 1 + 0.02 * (random() - 0.5);
    heat(powerW, at(490 + 60 * random()), 50 + 150 * random(), highW * wander, fanW);
    if (random() < 0.4) powerW.fill(lowW * wander, at(810), at(810 + 30 + 60 * random()));
    if (day === 17) heat(powerW, at(1050), 205, highW * wander, highW * wander);
  }
  const tsUtcSeconds = Float64Array.from(powerW, (_, minute) => start + 60 * minute);
  return { tsUtcSeconds, powerW };
}

function heat(powerW: Float64Array, from: number, minutes: number, onW: number, pauseW: number): void {
  for (let minute = 0; minute < minutes; minute++)
    powerW[from + minute] = minute % CYCLE_MINUTES < ON_MINUTES ? onW : pauseW;
}
