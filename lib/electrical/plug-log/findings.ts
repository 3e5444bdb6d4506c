import type { Finding } from "@/lib/findings/finding";

export type PlugFindingCode =
  | "gaps-in-log"
  | "never-on"
  | "levels-from-means"
  | "level-not-on-record"
  | "level-differs"
  | "runs-outside-occupied"
  | "runs-three-hours"
  | "short-log";

const number = (value: unknown, digits: number): string =>
  typeof value === "number" ? String(Number(value.toFixed(digits))) : String(value ?? "");

/** The sentence for a finding about a plug log: what, how much, what to do. */
export function plugFindingText({ code, evidence }: Finding<PlugFindingCode>): string {
  const { hours, gaps, powerW, onRecordW, setting, stepMinutes, days } = evidence;
  switch (code) {
    case "gaps-in-log":
      return `${number(hours, 1)} h are without readings, in ${gaps} gaps. They count as not logged, neither as off nor as on.`;
    case "never-on":
      return "The device was never on in this log: it says nothing of its settings.";
    case "levels-from-means":
      return `Readings ${number(stepMinutes, 0)} min apart are means: a setting that cycles within them shows as a level of its own. Energy is right; log at a minute or less to find the settings.`;
    case "level-not-on-record":
      return `A level of ${number(powerW, 0)} W fits no setting of the register. Look whether a setting is missing there, or whether something else was on the logger.`;
    case "level-differs":
      return `${number(powerW, 0)} W were logged at ${setting}, ${number(onRecordW, 0)} W are on record. Measure it again, or enter the logger's figure as that of a plug-in meter.`;
    case "runs-outside-occupied":
      return `It ran ${number(hours, 1)} h outside occupied hours. A heater that runs with nobody there is a matter for the safety inspection first, and for its energy second.`;
    case "runs-three-hours":
      return `Its longest run at the highest level was ${number(hours, 1)} h. From 3 h on a load counts as continuous for its circuit.`;
    case "short-log":
      return `${days === 1 ? "1 whole day was" : `${days} whole days were`} logged. No season is worked out from fewer than 5: the days differ more than so few can show. Leave the logger for two weeks or more.`;
  }
}
