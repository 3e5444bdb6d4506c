"use client";

import { CheckboxField } from "@/app/_components/ui/checkbox-field";
import { NumberField } from "@/app/_components/ui/number-field";
import { SelectField } from "@/app/_components/ui/select-field";
import { settingLabel } from "@/lib/electrical/device-kind";
import { settingField } from "../form";
import { removeSetting } from "../sheet-entries";
import styles from "./device-form.module.css";
import { SettingMore } from "./setting-more";

type Props = { index: number; values: Record<string, string>; errors: Record<string, string>; removable: boolean };

const BASES = [
  { value: "plug-meter", label: "plug-in energy meter" },
  { value: "clamp", label: "clamp meter" },
  { value: "nameplate", label: "nameplate" },
  { value: "class-default", label: "not measured: usual value of its sort" },
];

const TURNS = [
  { value: "1", label: "1" },
  { value: "10", label: "10" },
];

/**
 * The entries of one setting in the order in which they are read off. The style sheet shows those that the chosen
 * basis uses, so that it needs no script; the others stay in the form with their values.
 */
export function SettingEntry({ index, values, errors, removable }: Props) {
  const name = values[settingField(index, "name")] ?? "";
  const of = (field: string) => {
    const fieldName = settingField(index, field);
    return { name: fieldName, defaultValue: values[fieldName] ?? "", error: errors[fieldName] };
  };
  return (
    <fieldset className={styles.setting}>
      <legend>{settingLabel(name)}</legend>
      <input type="hidden" name={settingField(index, "name")} value={name} />
      <div className={styles.entries}>
        <div className={styles.basis}>
          <SelectField {...of("basis")} label="Power known by" options={BASES} />
        </div>
        <div className={styles.ofClamp}>
          <NumberField {...of("currentA")} label="Current" unit="A" />
          <NumberField {...of("currentResolutionA")} label="Meter's last digit" optional unit="A" placeholder="0.01" />
          <SelectField
            {...of("clampTurns")}
            defaultValue={values[settingField(index, "clampTurns")] ?? "1"}
            label="Turns"
            options={TURNS}
          />
          <NumberField {...of("voltageV")} label="Voltage" unit="V" />
          <CheckboxField
            name={settingField(index, "voltageMeasured")}
            label="read under load"
            defaultChecked={values[settingField(index, "voltageMeasured")] !== undefined}
          />
          <NumberField {...of("powerFactor")} label="Power factor" optional unit="0 to 1" />
        </div>
        <div className={styles.ofPower}>
          <NumberField {...of("powerW")} label="Power" unit="W" />
        </div>
        <div className={styles.ofNameplate}>
          <NumberField {...of("nameplateW")} label="Printed power" unit="W" />
        </div>
        <div className={styles.use}>
          <NumberField {...of("hoursPerYear")} label="Selected" unit="h a year" />
          <NumberField {...of("dutyFraction")} label="Duty" unit="0 to 1" />
        </div>
      </div>
      <SettingMore index={index} values={values} errors={errors}>
        {removable ? (
          <button type="submit" name="intent" value={removeSetting(index)} className={styles.remove}>
            Take this setting out
          </button>
        ) : null}
      </SettingMore>
    </fieldset>
  );
}
