import { DataTable } from "@/app/_components/ui/data-table";
import type { VerdictNote } from "@/lib/services/zone-verdicts/read";
import type { Verdict } from "@/lib/trends/diagnosis/diagnose-zone";
import { verdictNoteLines } from "../verdict-view-model";

type Props = { notes: readonly VerdictNote[]; verdict: Verdict; timeZone: string };

/** What was said of the zone's verdicts, newest first, each beside the verdict of its time. */
export function VerdictNotes({ notes, verdict, timeZone }: Props) {
  return (
    <DataTable
      caption="What was said of this zone's verdict"
      captionHidden
      rows={verdictNoteLines(notes, verdict, timeZone)}
      rowKey={(row) => row.id}
      columns={[
        { key: "at", head: "When", names: true, cell: (row) => row.at },
        { key: "by", head: "Who", cell: (row) => row.by },
        { key: "said", head: "Said", cell: (row) => row.said },
        { key: "verdict", head: "Verdict then", cell: (row) => row.verdict },
        { key: "note", head: "Found", cell: (row) => row.note },
        { key: "since", head: "Since then", cell: (row) => row.since },
      ]}
      empty={<p>Nobody has looked at this verdict on site yet.</p>}
    />
  );
}
