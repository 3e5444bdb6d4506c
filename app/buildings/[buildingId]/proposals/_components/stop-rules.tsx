import { Section } from "@/app/_components/shell/section";
import { DataTable } from "@/app/_components/ui/data-table";
import { Notice } from "@/app/_components/ui/notice";
import type { WatchedTrial } from "@/lib/services/proposals/watch";
import { formatLocalDate } from "@/lib/time/format";
import type { TemperatureUnit } from "@/lib/units/format";
import { brokenSentence, ruleFigure, ruleWhen, STOP_RULE_LABELS } from "../stop-rule-words";

type Props = { trial: WatchedTrial; unit: TemperatureUnit };

/** Says which stop rule was broken, when and by how much, and what to do. Nothing while all hold. */
export function BrokenRules({ trial, unit }: Props) {
  const sentences = trial.rules.flatMap((each) => brokenSentence(each, unit) ?? []);
  if (sentences.length === 0) return null;
  return (
    <Notice kind="caution" title={sentences.length === 1 ? "A stop rule is broken" : "Stop rules are broken"}>
      {sentences.map((each) => (
        <p key={each}>{each}</p>
      ))}
      <p>
        The limits were set before the trial began. Hold it, which keeps the setting and goes no further, or roll it
        back: both are under the next step. Tell those who reported what you do.
      </p>
    </Notice>
  );
}

/** The limits of a running trial beside the highest that trends and reports show since it began. */
export function StopRules({ trial, unit }: Props) {
  return (
    <Section id="stop-rules" title="Stop rules" wide>
      <p>
        {trial.until
          ? `Since ${formatLocalDate(trial.since)}, by trends up to ${formatLocalDate(trial.until)} and reports up to now.`
          : `Since ${formatLocalDate(trial.since)}; no trend has come in since then.`}{" "}
        A limit that is reached breaks its rule. Predicted dissatisfied count by the ISO 7730 method for 0.5 clo, 1.1
        met, 50 % relative humidity and surfaces as warm as the air.
      </p>
      <DataTable
        caption="Limits of the trial and the highest since it began"
        captionHidden
        rows={trial.rules}
        rowKey={({ rule }) => rule}
        columns={[
          { key: "rule", head: "Rule", names: true, cell: ({ rule }) => STOP_RULE_LABELS[rule] },
          { key: "limit", head: "Limit", align: "number", cell: ({ rule, limit }) => ruleFigure(rule, limit, unit) },
          {
            key: "highest",
            head: "Highest",
            align: "number",
            cell: ({ rule, highest }) => (highest ? ruleFigure(rule, highest.figure, unit) : "none yet"),
          },
          { key: "when", head: "Where and when", cell: ({ highest }) => (highest ? ruleWhen(highest) : "") },
          {
            key: "state",
            head: "State",
            cell: ({ broken }) => (broken ? <strong>broken: {ruleWhen(broken)}</strong> : "holds"),
          },
        ]}
      />
    </Section>
  );
}
