import Link from "next/link";
import { DataTable } from "@/app/_components/ui/data-table";
import { Disclosure } from "@/app/_components/ui/disclosure";
import type { ImportLine } from "@/lib/services/imports/history";
import { formatLocal } from "@/lib/time/format";

type Props = { runs: readonly ImportLine[]; path: string; timeZone: string };

/** Trend files that were read and wait for their mapping; each can be cancelled. */
export function WaitingFiles({ runs, path, timeZone }: Props) {
  return (
    <Disclosure summary={runs.length === 1 ? "The file that waits" : `The ${runs.length} files that wait`}>
      <DataTable
        caption="Files that wait for their mapping"
        captionHidden
        rows={runs}
        rowKey={(run) => run.id}
        columns={[
          {
            key: "file",
            head: "File",
            names: true,
            cell: (run) => <Link href={`${path}/${run.id}`}>{run.fileName}</Link>,
          },
          { key: "by", head: "By", cell: (run) => run.startedBy },
          { key: "at", head: "When", cell: (run) => formatLocal(run.startedAtMs, timeZone, "date-time") },
          {
            key: "cancel",
            head: "Withdraw",
            cell: (run) => (
              <Link href={`${path}/${run.id}/withdraw`} aria-label={`Cancel ${run.fileName}`}>
                Cancel
              </Link>
            ),
          },
        ]}
      />
    </Disclosure>
  );
}
