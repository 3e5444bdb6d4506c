import { Button } from "@/app/_components/ui/button";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormStack } from "@/app/_components/ui/form-stack";
import { SelectField } from "@/app/_components/ui/select-field";
import type { ZoneHistory } from "@/lib/services/zones/history";

const SPANS = [
  { value: "1", label: "one day" },
  { value: "7", label: "one week" },
  { value: "14", label: "two weeks" },
  { value: "31", label: "one month" },
  { value: "92", label: "three months" },
  { value: "366", label: "one year" },
];

/** Chooses the period of the picture: a plain form, so that a period has an address. */
export function PeriodForm({
  period,
  recorded,
}: {
  period: ZoneHistory["period"];
  recorded: NonNullable<ZoneHistory["recorded"]>;
}) {
  const known = SPANS.some((span) => span.value === String(period.days));
  const spans = known ? SPANS : [{ value: String(period.days), label: `${period.days} days` }, ...SPANS];
  return (
    <FormStack method="get" action="#history">
      <FieldSet legend="Period" legendHidden inline>
        <Field
          name="from"
          label="From"
          type="date"
          defaultValue={period.from}
          min={recorded.first}
          max={recorded.last}
        />
        <SelectField name="days" label="For" options={spans} defaultValue={String(period.days)} />
        <Button type="submit">Show</Button>
      </FieldSet>
    </FormStack>
  );
}
