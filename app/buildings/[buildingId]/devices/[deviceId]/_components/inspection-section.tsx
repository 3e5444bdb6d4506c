import Link from "next/link";
import { LinkButton } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import type { BoundAction } from "@/app/_server/form-state";
import { checklistLabel } from "@/lib/electrical/inspection/checklists";
import { severityLabel } from "@/lib/electrical/inspection/inspection-words";
import type { DeviceRecord } from "@/lib/services/devices/record";
import { formatLocalDate } from "@/lib/time/format";
import { inspectionWords } from "../view-model";
import { CorrectItemForm } from "./correct-item-form";

type Props = { record: DeviceRecord; devicePath: string; correct: BoundAction; today: string };

/** What is open, what was put right, and every inspection so far. */
export function InspectionSection({ record, devicePath, correct, today }: Props) {
  const { open, inspections, faults } = record;
  const faultOf = (itemId: string): string => faults[itemId] ?? itemId;
  const put = inspections.flatMap(({ items }) => items.filter(({ correctedOn }) => correctedOn !== null));
  return (
    <>
      <DataTable
        caption="Found at fault and still open"
        rows={open}
        rowKey={(item) => item.id}
        columns={[
          { key: "fault", head: "Item", names: true, cell: (item) => faultOf(item.itemId) },
          { key: "severity", head: "Asks for", cell: (item) => severityLabel(item.severity) },
          { key: "found", head: "Found on", cell: (item) => formatLocalDate(item.inspectedOn) },
          {
            key: "due",
            head: "Due",
            cell: (item) =>
              item.dueOn ? `${formatLocalDate(item.dueOn)}${item.dueOn < today ? ", overdue" : ""}` : "",
          },
          { key: "note", head: "What was found", cell: (item) => item.note },
          {
            key: "photo",
            head: "Photo",
            cell: (item) => <Link href={`${devicePath}/photos?finding=${item.id}`}>Photograph it</Link>,
          },
        ]}
        empty={<p>{inspections.length === 0 ? "It was not inspected yet." : "Nothing is open."}</p>}
      />
      {open.length > 0 ? (
        <CorrectItemForm
          action={correct}
          items={open.map(({ id, itemId }) => ({ id, fault: faultOf(itemId) }))}
          today={today}
        />
      ) : null}
      <DataTable
        caption="Put right"
        rows={put}
        rowKey={(item) => item.id}
        columns={[
          { key: "fault", head: "Item", names: true, cell: (item) => faultOf(item.itemId) },
          { key: "on", head: "On", cell: (item) => formatLocalDate(item.correctedOn ?? "") },
          { key: "by", head: "By", cell: (item) => item.correctedBy ?? "" },
          { key: "how", head: "How", cell: (item) => item.correctionNote },
        ]}
        empty={<span />}
      />
      <DataTable
        caption="Inspections, the newest first"
        rows={inspections}
        rowKey={(inspection) => inspection.id}
        columns={[
          { key: "on", head: "On", names: true, cell: ({ inspectedOn }) => formatLocalDate(inspectedOn) },
          { key: "checklist", head: "Checklist", cell: ({ checklist }) => checklistLabel(checklist) },
          { key: "outcome", head: "Outcome", cell: inspectionWords },
          { key: "by", head: "By", cell: ({ enteredBy }) => enteredBy },
          {
            key: "next",
            head: "Next due",
            cell: ({ nextDueOn }) =>
              nextDueOn ? `${formatLocalDate(nextDueOn)}${nextDueOn < today ? ", overdue" : ""}` : "",
          },
        ]}
        empty={<span />}
      />
      <p>
        <LinkButton href={`${devicePath}/inspection`}>Inspect it now</LinkButton>
      </p>
    </>
  );
}
