import { SETTING_WORDS, trialCalendar } from "@/lib/proposals/trial-calendar";
import type { TrialPlan } from "@/lib/proposals/trial-plan";
import { formatTemperatureDifference, type TemperatureUnit } from "@/lib/units/format";
import type { CaseInput } from "../case-input";

/** Trial and proof by measurement (IPMVP options A and B for heaters, air handler and chiller; from memory). */
export function verificationPlan(
  { stepKPerWeek, switchback }: TrialPlan,
  unit: TemperatureUnit,
): CaseInput["verification"] {
  const trial = switchback
    ? {
        step: "Trial by alternate weeks",
        how: `${switchback.pairs} pairs of a week with the old and a week with the new setting, in an order drawn beforehand with seed ${switchback.seed}, the first day of each week left out`,
        when: `${2 * switchback.pairs} weeks of one season`,
      }
    : {
        step: "Trial in steps",
        how: `at most ${formatTemperatureDifference(stepKPerWeek, unit).text} a week, with the stop rules under risks`,
        when: "from the first week on, until the whole change is made",
      };
  return [
    trial,
    {
      step: "Zone air",
      how: "zone air temperature and degree-hours below the target, in hours of like weather before and after",
      when: "after each month of the cooling season",
    },
    {
      step: "Comfort reports",
      how: "rates of cold and of hot reports, before and after, by an exact conditional test with interval and power",
      when: "after as many weeks as the test needs to tell",
    },
    { step: "Heaters", how: "a walk past the desks, heater by heater", when: "after 4 and after 12 weeks" },
    {
      step: "Energy",
      how: switchback
        ? "paired difference of the weeks at the submeter of air handler and chiller"
        : "submeter of air handler and chiller; the main meter only where the saving is large enough to be seen there",
      when: switchback ? "at the end of the trial" : "after a cooling season",
    },
    {
      step: "Verdict",
      how: "shown, not shown, too early or worse, with the numbers; a saving that is not shown is not claimed",
      when: "after a cooling season, and again after a year",
    },
  ];
}

/** The calendar of a switchback, as its seed draws it again whenever the case is printed. */
export function trialWeeks({ switchback }: TrialPlan): CaseInput["trialWeeks"] {
  if (!switchback?.beginsOn) return [];
  return trialCalendar(switchback, switchback.beginsOn).map(({ week, pair, from, to, setting }) => ({
    week: week + 1,
    pair: pair + 1,
    from,
    to,
    setting: SETTING_WORDS[setting],
  }));
}
