import { FieldSet } from "@/app/_components/ui/field-set";
import { SelectField } from "@/app/_components/ui/select-field";
import type { PastReports } from "@/lib/services/comfort-reports/import-past";

const FIELDS = [
  { field: "date", label: "Date" },
  { field: "time", label: "Time of day" },
  { field: "zone", label: "Zone" },
  { field: "desk", label: "Desk" },
  { field: "text", label: "What was written" },
] as const;

/** Which column holds what; proposed by the headings, settled by a person. */
export function ColumnChoices({ read, values }: { read: PastReports; values: Record<string, string> }) {
  const proposed = read.status === "ok" ? read.columns : {};
  const options = read.headings.map((heading, at) => ({ value: String(at), label: heading || `Column ${at + 1}` }));
  return (
    <FieldSet legend="Columns" inline>
      {FIELDS.map(({ field, label }) => {
        const at = proposed[field] ?? null;
        return (
          <SelectField
            key={field}
            name={`column-${field}`}
            label={label}
            options={[{ value: "none", label: "None" }, ...options]}
            defaultValue={values[`column-${field}`] ?? (at === null ? "none" : String(at))}
          />
        );
      })}
      <SelectField
        name="dateOrder"
        label="Dates such as 5/6/2025"
        prompt="As the dates show"
        options={[
          { value: "mdy", label: "Month first" },
          { value: "dmy", label: "Day first" },
        ]}
        defaultValue={values.dateOrder ?? ""}
      />
    </FieldSet>
  );
}
