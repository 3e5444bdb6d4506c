import { DataTable } from "@/app/_components/ui/data-table";
import { SelectField } from "@/app/_components/ui/select-field";
import type { PastReportFate } from "@/lib/services/comfort-reports/import-past";

/** Rows that are shown at once: the rest follows what is said of columns and words. */
const SHOWN = 300;

const KINDS = [
  { value: "cold", label: "Cold" },
  { value: "hot", label: "Hot" },
  { value: "other", label: "Something else" },
];

type Props = { rows: readonly PastReportFate[]; values: Record<string, string> };

/** What becomes of each row; what it is about can be set by hand. Rows to look at come first. */
export function RowFates({ rows, values }: Props) {
  const ordered = [...rows].sort((a, b) => rank(a) - rank(b) || a.line - b.line).slice(0, SHOWN);
  const shown = new Set(ordered.map(({ line }) => `kind-${line}`));
  const set = Object.keys(values).filter((name) => name.startsWith("kind-") && !shown.has(name));
  return (
    <>
      {set.map((name) => (
        <input key={name} type="hidden" name={name} value={values[name]} />
      ))}
      <DataTable
        caption={
          rows.length > SHOWN
            ? `The first ${SHOWN} of ${rows.length} rows, those to look at first`
            : "What becomes of each row"
        }
        rows={ordered}
        rowKey={(row) => row.line}
        columns={[
          { key: "line", head: "Line", align: "number", names: true, cell: (row) => row.line },
          { key: "place", head: "Place", cell: (row) => row.deskCode || row.zoneCode },
          { key: "text", head: "Written", cell: (row) => row.text },
          {
            key: "kind",
            head: "About",
            cell: (row) => (
              <SelectField
                name={`kind-${row.line}`}
                label={`Line ${row.line} is about`}
                prompt={`By its words: ${row.kind}`}
                options={KINDS}
                defaultValue={values[`kind-${row.line}`] ?? ""}
              />
            ),
          },
          { key: "words", head: "Words found", cell: (row) => row.matched.join(", ") },
          { key: "fate", head: "Fate", cell: (row) => (row.reason ? `${row.fate}: ${row.reason}` : row.fate) },
        ]}
      />
    </>
  );
}

const rank = ({ fate }: PastReportFate): number => ["rejected", "ignored", "repaired", "accepted"].indexOf(fate);
