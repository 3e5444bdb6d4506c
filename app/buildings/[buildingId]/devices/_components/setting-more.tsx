"use client";

import type { ReactNode } from "react";
import { Field } from "@/app/_components/ui/field";
import { NumberField } from "@/app/_components/ui/number-field";
import { SelectField } from "@/app/_components/ui/select-field";
import { settingField } from "../form";
import styles from "./device-form.module.css";

type Props = { index: number; values: Record<string, string>; errors: Record<string, string>; children: ReactNode };

const FIELDS = [
  "meterName",
  "meterAccuracyPct",
  "meterAccuracyCounts",
  "isTrueRms",
  "openVoltageV",
  "fanSpeed",
  "useBasis",
  "hoursPerDay",
  "daysPerYear",
  "useNote",
] as const;

const TRUE_RMS = [
  { value: "", label: "not said" },
  { value: "yes", label: "yes" },
  { value: "no", label: "no" },
];

const USES = [
  { value: "entered", label: "as entered" },
  { value: "schedule", label: "hours a day, days a year" },
  { value: "survey", label: "told by its user" },
  { value: "plug-logger", label: "plug logger" },
];

/** What a setting has beside its reading: the meter's own accuracy, the supply, the speed, and where its hours come from. */
export function SettingMore({ index, values, errors, children }: Props) {
  const of = (field: (typeof FIELDS)[number]) => {
    const name = settingField(index, field);
    return { name, defaultValue: values[name] ?? "", error: errors[name], optional: true };
  };
  const wrong = FIELDS.some((field) => errors[settingField(index, field)]);
  return (
    <details className={styles.more} open={wrong || undefined}>
      <summary>Meter, supply and use</summary>
      <div className={styles.moreFields}>
        <Field {...of("meterName")} label="Meter" autoComplete="off" />
        <NumberField {...of("meterAccuracyPct")} label="States ±" unit="%" placeholder="2" />
        <NumberField {...of("meterAccuracyCounts")} label="and" unit="digits" placeholder="5" />
        <SelectField {...of("isTrueRms")} label="True RMS" options={TRUE_RMS} />
        <NumberField {...of("openVoltageV")} label="Outlet with the device off" unit="V" />
        <Field {...of("fanSpeed")} label="Speed or dial at" autoComplete="off" />
        <SelectField {...of("useBasis")} label="Hours known by" options={USES} optional={false} />
        <NumberField {...of("hoursPerDay")} label="Hours a day" unit="h" />
        <NumberField {...of("daysPerYear")} label="Days a year" unit="days" />
        <Field {...of("useNote")} label="Months, or what was said" autoComplete="off" />
      </div>
      {children}
    </details>
  );
}
