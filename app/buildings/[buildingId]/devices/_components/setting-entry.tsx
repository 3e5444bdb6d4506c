"use client";

import { CheckboxField } from "@/app/_components/ui/choice-field";
import { NumberField } from "@/app/_components/ui/number-field";
import { SelectField } from "@/app/_components/ui/select-field";
import { settingLabel } from "@/lib/electrical/device-kind";
import { settingField } from "../form";
import styles from "./device-form.module.css";

type Props = {
  index: number;
  values: Record<string, string>;
  /** What stands in the form now; decides which readings are asked for. */
  typed: Record<string, string>;
  errors: Record<string, string>;
};

const BASES = [
  { value: "plug-meter", label: "plug-in energy meter" },
  { value: "clamp", label: "clamp meter" },
  { value: "nameplate", label: "nameplate" },
  { value: "class-default", label: "not measured: usual value of its sort" },
];

/** The entries of one setting. Fields that the chosen basis does not use stay in the form, set back, with their values. */
export function SettingEntry({ index, values, typed, errors }: Props) {
  const name = values[settingField(index, "name")] ?? "";
  const basis = typed[settingField(index, "basis")] ?? values[settingField(index, "basis")];
  const of = (field: string) => {
    const fieldName = settingField(index, field);
    return { name: fieldName, defaultValue: values[fieldName] ?? "", error: errors[fieldName] };
  };
  const unused = (used: boolean) => (used ? undefined : styles.unused);
  const clamp = basis === "clamp";
  return (
    <fieldset className={styles.setting}>
      <legend>{settingLabel(name)}</legend>
      <input type="hidden" name={settingField(index, "name")} value={name} />
      <div className={styles.entries}>
        <SelectField {...of("basis")} label="Power known by" options={BASES} />
        <div className={unused(clamp)}>
          <NumberField {...of("currentA")} label="Current" unit="A" />
        </div>
        <div className={unused(clamp)}>
          <NumberField {...of("currentResolutionA")} label="Meter's last digit" optional unit="A" placeholder="0.01" />
        </div>
        <div className={unused(clamp)}>
          <NumberField {...of("voltageV")} label="Voltage" unit="V" />
          <CheckboxField
            name={settingField(index, "voltageMeasured")}
            label="read at the outlet"
            defaultChecked={values[settingField(index, "voltageMeasured")] !== undefined}
          />
        </div>
        <div className={unused(clamp)}>
          <NumberField {...of("powerFactor")} label="Power factor" optional unit="0 to 1" />
        </div>
        <div className={unused(basis === "plug-meter" || basis === "nameplate")}>
          <NumberField {...of("powerW")} label="Power" unit="W" />
        </div>
        <NumberField {...of("hoursPerYear")} label="Selected" unit="h a year" />
        <NumberField {...of("dutyFraction")} label="Duty" unit="0 to 1" />
      </div>
    </fieldset>
  );
}
