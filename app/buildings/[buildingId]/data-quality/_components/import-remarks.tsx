import Link from "next/link";
import { Section } from "@/app/_components/shell/section";
import { DataTable } from "@/app/_components/ui/data-table";
import type { ImportRemark } from "@/lib/services/data-quality/import-remarks";
import { formatLocal } from "@/lib/time/format";

type Props = {
  title: string;
  none: string;
  remarks: readonly ImportRemark[];
  buildingPath: string;
  timeZone: string;
};

/** What imports found, each with its file. */
export function ImportRemarks({ title, none, remarks, buildingPath, timeZone }: Props) {
  return (
    <Section id="imports" title={title} wide>
      <DataTable
        caption={title}
        captionHidden
        rows={remarks}
        rowKey={(row) => `${row.runId} ${row.sentence}`}
        columns={[
          {
            key: "file",
            head: "File",
            names: true,
            cell: (row) => <Link href={`${buildingPath}/imports/${row.runId}`}>{row.fileName}</Link>,
          },
          { key: "when", head: "Brought in", cell: (row) => formatLocal(row.startedAtMs, timeZone, "date") },
          { key: "what", head: "What was found", cell: (row) => row.sentence },
        ]}
        empty={<p>{none}</p>}
      />
    </Section>
  );
}
