import { Button } from "@/app/_components/ui/button";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormStack } from "@/app/_components/ui/form-stack";
import { SelectField } from "@/app/_components/ui/select-field";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { POWER_BASES } from "@/lib/electrical/device-kind";
import { DEVICE_STATUSES, statusLabel } from "@/lib/electrical/device-status";
import { conditionLabel, SAFETY_CONDITIONS } from "@/lib/electrical/inspection/inspection-words";
import type { RegisterPart } from "@/lib/services/devices/list/read-register";
import type { RegisterQuery } from "@/lib/services/devices/list/register-query";

type Props = {
  path: string;
  query: RegisterQuery;
  choices: RegisterPart["choices"];
  originOf: (basis: (typeof POWER_BASES)[number]) => string;
  groups: readonly { value: string; label: string }[];
};

/** What the register shows and how it is grouped. Its entries travel in the address. */
export function RegisterFilter({ path, query, choices, originOf, groups }: Props) {
  const plain = (values: readonly string[]) => values.map((value) => ({ value, label: value }));
  return (
    <FormStack action={path} method="get">
      <FieldSet legend="Show" legendHidden inline>
        <Field name="q" label="Words" defaultValue={query.text} autoComplete="off" />
        <SelectField name="zone" label="Zone" prompt="any" defaultValue={query.zone} options={plain(choices.zones)} />
        <SelectField
          name="floor"
          label="Floor"
          prompt="any"
          defaultValue={query.floor}
          options={plain(choices.floors)}
        />
        <SelectField
          name="class"
          label="Sort"
          prompt="any"
          defaultValue={query.deviceClass}
          options={choices.classes.map((value) => ({ value, label: deviceClassById(value)?.label ?? value }))}
        />
        <SelectField
          name="status"
          label="Status"
          prompt="in the building"
          defaultValue={query.status}
          options={[
            { value: "all", label: "all, removed ones too" },
            ...DEVICE_STATUSES.map((value) => ({ value, label: statusLabel(value) })),
          ]}
        />
        <SelectField
          name="origin"
          label="Known by"
          prompt="any"
          defaultValue={query.origin}
          options={POWER_BASES.map((value) => ({ value, label: originOf(value) }))}
        />
        <SelectField
          name="condition"
          label="Inspection"
          prompt="any"
          defaultValue={query.condition}
          options={SAFETY_CONDITIONS.map((value) => ({ value, label: conditionLabel(value) }))}
        />
        <SelectField
          name="group"
          label="Grouped by"
          prompt="nothing"
          defaultValue={query.group ?? ""}
          options={groups}
        />
        {query.sort === "label" ? null : <input type="hidden" name="sort" value={query.sort} />}
        {query.descending ? <input type="hidden" name="order" value="down" /> : null}
        <Button type="submit">Show</Button>
      </FieldSet>
    </FormStack>
  );
}
