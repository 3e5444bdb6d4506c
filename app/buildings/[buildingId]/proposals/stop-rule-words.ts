import type { RuleFigure, RuleState, StopRule } from "@/lib/proposals/stop-rules";
import { formatLocalDate } from "@/lib/time/format";
import { counted } from "@/lib/units/counted";
import { formatNumber, formatTemperature, type TemperatureUnit } from "@/lib/units/format";

export const STOP_RULE_LABELS: Record<StopRule, string> = {
  "hot-reports": "Hot reports of seven days, all zones of the proposal",
  dissatisfied: "Predicted dissatisfied at the warmest zone's mean of seven days",
  "zone-air": "A zone's air, mean of an occupied day",
};

/** A figure or limit of a rule with its unit. */
export function ruleFigure(rule: StopRule, value: number, unit: TemperatureUnit): string {
  if (rule === "hot-reports") return formatNumber(value, { decimals: 0 });
  if (rule === "zone-air") return formatTemperature(value, unit).text;
  return `${formatNumber(value, { decimals: 1 })}\u202f%`;
}

/** "zone 2-14, 3 Jun 2026": where and when a figure was. */
export const ruleWhen = ({ zone, on }: RuleFigure): string => `${zone ? `zone ${zone}, ` : ""}${formatLocalDate(on)}`;

/** Which rule was broken, when and by how much; null while its limit is not reached. */
export function brokenSentence({ rule, limit, broken }: RuleState, unit: TemperatureUnit): string | null {
  if (!broken) return null;
  const [figure, most] = [ruleFigure(rule, broken.figure, unit), ruleFigure(rule, limit, unit)];
  const on = formatLocalDate(broken.on);
  switch (rule) {
    case "hot-reports":
      return `${counted(broken.figure, "hot report")} came in the seven days to ${on}; the limit is ${most} a week.`;
    case "dissatisfied":
      return `Zone ${broken.zone}: ${figure} predicted dissatisfied at a mean of ${formatTemperature(broken.meanC ?? 0, unit).text} over the seven days to ${on}; the limit is ${most}.`;
    case "zone-air":
      return `Zone ${broken.zone}: ${figure} on the mean of ${on}; the limit is ${most}.`;
  }
}
