import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { NumberField } from "@/app/_components/ui/number-field";
import { SelectField } from "@/app/_components/ui/select-field";
import { TextAreaField } from "@/app/_components/ui/text-area-field";
import { monthName } from "@/lib/proposals/window-words";
import { TrialCalendarTable } from "./trial-calendar-table";

type Props = {
  of: (name: string) => { name: string; defaultValue: string; error: string | undefined };
  /** What stands in the form now: the calendar of weeks follows it. */
  values: Readonly<Record<string, string>>;
  temperatureUnit: "C" | "F";
};

const MONTHS = Array.from({ length: 12 }, (_, k) => ({
  value: String(k + 1),
  label: monthName(k + 1),
}));

/** When the levers act: the figures count what lies in it. */
export function SeasonFields({ of }: Pick<Props, "of">) {
  return (
    <FieldSet
      legend="Season and hours"
      hint="The levers act in these months and hours, and only they are counted. A new proposal begins with the months in which the weather year cools."
      inline
    >
      <SelectField {...of("seasonFromMonth")} label="From" options={MONTHS} />
      <SelectField {...of("seasonToMonth")} label="To" options={MONTHS} />
      <Field {...of("from")} label="Each day from" unit="hh:mm" />
      <Field {...of("to")} label="until" unit="hh:mm" />
    </FieldSet>
  );
}

/** Trial, limits that stop it, and the notice that people read. */
export function PlanFields({ of, values, temperatureUnit }: Props) {
  return (
    <>
      <FieldSet legend="Trial" inline>
        <SelectField
          {...of("trial")}
          label="How it is tried"
          options={[
            { value: "steps", label: "in steps" },
            { value: "switchback", label: "alternate weeks in a drawn order" },
          ]}
        />
        <NumberField {...of("stepKPerWeek")} label="Step" unit="K a week" />
        <NumberField {...of("pairs")} label="Pairs of weeks, if alternate" unit="pairs" />
        <NumberField {...of("seed")} label="Seed of the drawn order" unit="" />
        <Field {...of("beginsOn")} label="First day of the first week, if alternate" unit="YYYY-MM-DD" optional />
      </FieldSet>
      {values.trial === "switchback" ? (
        <TrialCalendarTable
          trial={{
            pairs: Number(values.pairs || Number.NaN),
            seed: Number(values.seed || Number.NaN),
            beginsOn: values.beginsOn ?? "",
          }}
        />
      ) : null}
      <FieldSet legend="Stop when" hint="Set before it begins; the first limit that is reached stops the trial." inline>
        <NumberField {...of("hotReportsPerWeek")} label="Hot reports reach" unit="a week" />
        <NumberField {...of("dissatisfiedPct")} label="Predicted dissatisfied reach" unit="%" />
        <NumberField {...of("zoneAirTemp")} label="A zone's air reaches, mean of a day" unit={`°${temperatureUnit}`} />
      </FieldSet>
      <FieldSet legend="Notice to occupants">
        <TextAreaField {...of("notice")} label="Text" rows={4} />
      </FieldSet>
    </>
  );
}
