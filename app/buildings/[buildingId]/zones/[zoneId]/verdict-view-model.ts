import type { Building } from "@/lib/services/buildings/find";
import type { VerdictNote } from "@/lib/services/zone-verdicts/read";
import { formatLocal } from "@/lib/time/format";
import type { Verdict } from "@/lib/trends/diagnosis/diagnose-zone";
import type { VerdictStance } from "@/lib/trends/diagnosis/verdict-stance";
import { VERDICT_WORDS } from "@/lib/trends/diagnosis/verdict-words";
import type { MinimumAirflowPrediction } from "@/lib/trends/minimum-airflow-prediction";
import { quantityWords } from "@/lib/trends/quantity-words";

type Shown = Pick<Building, "temperatureUnit" | "timeZone">;

/** Verdicts for which a lower minimum airflow is proposed, and so argued for. */
const WITH_MINIMUM: readonly (Verdict | null)[] = ["minimum-airflow-first", "both-minimum-first"];

/**
 * What a lower minimum airflow would do to the zone, before and after the figure that opens; null where nothing is proposed.
 * `figure` is null where there is none, and `before` then says why.
 */
export function lowerMinimumWords(
  prediction: MinimumAirflowPrediction | null,
  verdict: Verdict | null,
  building: Shown,
): { before: string; figure: string | null; after: string } | null {
  if (!WITH_MINIMUM.includes(verdict)) return null;
  const words = quantityWords(building.temperatureUnit, building.timeZone);
  const none = (why: string) => ({
    before: `What a lower minimum airflow would do cannot be shown: ${why}`,
    figure: null,
    after: "",
  });
  if (!prediction) return none("the zone's record needs its minimum and its design airflow.");
  switch (prediction.status) {
    case "ok": {
      const { nowC, thenC, lowC, highC, hours, state } = prediction;
      const where = state === "reheat" ? "in reheat" : "at its minimum airflow";
      const range =
        highC - lowC < 0.05 ? "" : ` (${words.temp(lowC)} to ${words.temp(highC)} over the range of what it needs)`;
      return {
        before: `With ${words.airflow(prediction.requiredAirflowM3ps)} instead of ${words.airflow(prediction.minimumAirflowM3ps)} the zone, now ${words.temp(nowC)} on average in its ${words.hours(hours)} ${where}, would settle at about`,
        figure: words.temp(thenC),
        after: thenC - nowC < 0.05 ? "as now, without the reheat." : `without any change of the setpoint${range}.`,
      };
    }
    case "no-hours-at-minimum":
      return none("too few hours at minimum airflow are recorded.");
    case "needs-discharge-air":
      return none("in reheat only a trend of the discharge air temperature tells what heat the zone has of its own.");
    case "not-overcooled":
      return none("in its hours at minimum airflow the zone is not below the target on average.");
    case "at-required-airflow":
      return none("the minimum airflow is no more than the zone is taken to need; check both figures.");
    case "outside-limits":
      return none(`${prediction.limits}.`);
  }
}

export const STANCE_WORDS: Record<VerdictStance, string> = {
  confirmed: "confirmed",
  rejected: "rejected",
  noted: "noted",
};

export type VerdictNoteLine = {
  id: number;
  at: string;
  by: string;
  said: string;
  /** Verdict of that time. */
  verdict: string;
  note: string;
  /** What has changed since; "" when nothing has. */
  since: string;
};

/** The newest of what was said, as a sentence beside the verdict. */
export function lastSaid(notes: readonly VerdictNote[], verdict: Verdict, timeZone: string): string {
  const [last] = verdictNoteLines(notes.slice(0, 1), verdict, timeZone);
  if (!last) return "Nobody has looked at this verdict on site yet.";
  const about = last.said === "noted" ? "noted something about" : last.said;
  return `${last.by} ${about} the verdict "${last.verdict}" on ${last.at}${last.since ? `; since then ${last.since}` : ""}.`;
}

/** What was said of a zone's verdicts, with what has changed since. */
export function verdictNoteLines(notes: readonly VerdictNote[], verdict: Verdict, timeZone: string): VerdictNoteLine[] {
  return notes.map((each) => ({
    id: each.id,
    at: formatLocal(each.enteredAtMs, timeZone, "date-time"),
    by: each.enteredBy,
    said: STANCE_WORDS[each.stance],
    verdict: VERDICT_WORDS[each.verdict as Verdict] ?? each.verdict,
    note: each.note,
    since: [
      each.verdict === verdict ? "" : "the verdict is another now",
      each.dataChanged ? "the zone's data have changed" : "",
    ]
      .filter((part) => part !== "")
      .join("; "),
  }));
}
