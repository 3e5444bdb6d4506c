import Link from "next/link";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import type { OpenZoneLine } from "../inbox-view-model";

/** One line a zone: how many, since when, cold against hot, one person or several, what stands there and why. */
export function OpenZoneTable({ lines, buildingPath }: { lines: readonly OpenZoneLine[]; buildingPath: string }) {
  return (
    <DataTable
      caption="Zones with open reports; several people: reports of one kind from two desks, from a desk and without a desk, or three without a desk"
      rows={lines}
      rowKey={(row) => row.zoneId}
      columns={[
        { key: "zone", head: "Zone", names: true, cell: (row) => <Link href={row.href}>{row.zoneCode}</Link> },
        { key: "reports", head: "Open", align: "number", cell: (row) => row.reports },
        { key: "people", head: "Person-days", align: "number", cell: (row) => row.personDays },
        { key: "cold", head: "Cold", align: "number", cell: (row) => row.cold },
        { key: "hot", head: "Hot", align: "number", cell: (row) => row.hot },
        { key: "age", head: "Oldest", align: "number", cell: (row) => row.age },
        { key: "from", head: "From", cell: (row) => row.from },
        { key: "devices", head: "Heaters and fans", align: "number", cell: (row) => row.devices },
        {
          key: "why",
          head: "Diagnosis",
          cell: (row) => <Link href={`${buildingPath}/zones/${row.zoneId}#why`}>{row.verdict}</Link>,
        },
      ]}
      empty={<EmptyState>Nobody waits for anything.</EmptyState>}
    />
  );
}
