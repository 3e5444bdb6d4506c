"use client";

import { Button } from "@/app/_components/ui/button";
import { Field } from "@/app/_components/ui/field";
import { SelectField } from "@/app/_components/ui/select-field";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { SETTING_NAMES, settingLabel } from "@/lib/electrical/device-kind";
import { settingCount, settingField } from "../form";
import { ADD_SETTING } from "../sheet-entries";
import styles from "./device-form.module.css";

/** A further setting: one of its sort, another of the usual ones, or a name of one's own. */
export function AddSetting({ values }: { values: Record<string, string> }) {
  const present = new Set(
    Array.from({ length: settingCount(values) }, (_, index) => values[settingField(index, "name")]),
  );
  const ofClass = deviceClassById(values.deviceClass ?? "")?.settings.map(({ name }) => name) ?? [];
  const names = [...new Set([...ofClass, ...SETTING_NAMES])].filter((name) => !present.has(name));
  return (
    <div className={styles.adding}>
      <SelectField
        name="newSetting"
        label="A further setting"
        optional
        prompt="of its own name"
        options={names.map((name) => ({ value: name, label: settingLabel(name) }))}
        defaultValue=""
      />
      <Field name="newSettingName" label="Its own name" optional autoComplete="off" maxLength={40} defaultValue="" />
      <Button type="submit" name="intent" value={ADD_SETTING}>
        Add the setting
      </Button>
    </div>
  );
}
