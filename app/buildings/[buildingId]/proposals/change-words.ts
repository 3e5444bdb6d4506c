import type { DateWindow } from "@/lib/proposals/verification-plan";
import type { VerificationResult } from "@/lib/proposals/verification-result";
import type { Building } from "@/lib/services/buildings/find";
import type { readDetectability } from "@/lib/services/proposals/verify";
import { formatLocal, formatLocalDate } from "@/lib/time/format";
import { formatTemperature } from "@/lib/units/format";

type Shown = Pick<Building, "temperatureUnit" | "timeZone">;
type Move = { code: string; setting: string; atUtcSeconds: number; fromC: number; toC: number };

/** "Zone 2-14: cooling setpoint from 21.5 °C to 22.5 °C on 3 March 2026". */
export function changeSentence({ code, setting, atUtcSeconds, fromC, toC }: Move, building: Shown): string {
  const temp = (value: number): string => formatTemperature(value, building.temperatureUnit).text;
  const on = formatLocal(atUtcSeconds * 1000, building.timeZone, "date");
  return `Zone ${code}: ${setting.replace("-", " ")} from ${temp(fromC)} to ${temp(toC)} on ${on}`;
}

/** "Setpoint in zone 2-14 went back to 21.5 °C on 3 March 2026". */
export function wentBackSentence(
  { code, back }: { code: string; back: { atUtcSeconds: number; toC: number } },
  building: Shown,
): string {
  const on = formatLocal(back.atUtcSeconds * 1000, building.timeZone, "date");
  return `Setpoint in zone ${code} went back to ${formatTemperature(back.toC, building.temperatureUnit).text} on ${on}`;
}

/** Which days a verification compared, and how. */
export function windowsSentence({ method, before, after }: NonNullable<VerificationResult["by"]>): string {
  const days = ({ from, to }: DateWindow): string => `${formatLocalDate(from)} to ${formatLocalDate(to)}`;
  return method === "switchback"
    ? `Alternate weeks, paired, ${days(after)}.`
    : `Before: ${days(before)}. After: ${days(after)}. Days of like weather are compared.`;
}

type Detectable = NonNullable<Awaited<ReturnType<typeof readDetectability>>>;

/** What the meter can show at all, before anyone waits for it: the sentence before its two figures. */
export function detectabilitySentence({ daysAfter, found }: Detectable): string {
  if (found.status === "no-model")
    return "The meter's days before have no usable model: energy will not be shown by the meter, whatever the wait.";
  return `The meter has a ${found.model} model of ${found.days} days before. With ${daysAfter} days after it can show, at 90\u202f% confidence, a saving from the least share below; a smaller one will not be told from noise: rely on zone air and reports then.`;
}
