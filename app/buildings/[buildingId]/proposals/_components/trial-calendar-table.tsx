import { DataTable } from "@/app/_components/ui/data-table";
import { type CalendarWeek, SETTING_WORDS, trialCalendar } from "@/lib/proposals/trial-calendar";
import type { Switchback } from "@/lib/proposals/trial-plan";
import { dayNumberFromLocalDate } from "@/lib/time/civil-date";

type Props = { trial: Switchback };

/** Longest calendar that is drawn while numbers are typed: a form refuses more. */
const MOST_PAIRS = 26;

/** The weeks of a switchback as the seed draws them. Nothing while a number or the first day is missing. */
export function TrialCalendarTable({ trial }: Props) {
  const weeks = weeksOf(trial);
  if (!weeks) return <p>Give pairs, seed and the first day: the calendar of weeks stands here then.</p>;
  return (
    <DataTable
      caption={`Calendar of alternate weeks, drawn with seed ${trial.seed}`}
      rows={weeks}
      rowKey={({ week }) => week}
      columns={[
        { key: "week", head: "Week", names: true, cell: ({ week }) => `Week ${week + 1}` },
        { key: "pair", head: "Pair", align: "number", cell: ({ pair }) => pair + 1 },
        { key: "from", head: "From", cell: ({ from }) => from },
        { key: "to", head: "To", cell: ({ to }) => to },
        { key: "setting", head: "Setting", cell: ({ setting }) => SETTING_WORDS[setting] },
        { key: "counts", head: "Counts from", cell: ({ countsFrom }) => countsFrom },
      ]}
    />
  );
}

function weeksOf({ pairs, seed, beginsOn }: Switchback): CalendarWeek[] | null {
  const isWhole = Number.isInteger(pairs) && pairs >= 1 && pairs <= MOST_PAIRS && Number.isInteger(seed) && seed >= 0;
  if (!isWhole || !beginsOn || dayNumberFromLocalDate(beginsOn) === null) return null;
  return trialCalendar({ pairs, seed }, beginsOn);
}
