import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import type { StepLine } from "../view-model";

/** What was done about a report, first things first. */
export function StepTable({ lines }: { lines: readonly StepLine[] }) {
  return (
    <DataTable
      caption="What was done about this report"
      captionHidden
      rows={lines}
      rowKey={(row) => row.id}
      columns={[
        { key: "at", head: "When", names: true, cell: (row) => row.at },
        { key: "who", head: "Who", cell: (row) => row.by },
        { key: "state", head: "State", cell: (row) => row.state },
        { key: "done", head: "Done", cell: (row) => row.done },
        { key: "note", head: "What was changed", cell: (row) => row.note },
        { key: "answer", head: "Answer to the occupant", cell: (row) => row.answer },
        ...(lines.some(({ mail }) => mail !== "")
          ? [{ key: "mail", head: "Mail", cell: (row: StepLine) => row.mail }]
          : []),
      ]}
      empty={<EmptyState>Nothing yet.</EmptyState>}
    />
  );
}
