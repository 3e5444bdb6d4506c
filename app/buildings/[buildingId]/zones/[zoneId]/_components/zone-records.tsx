import Link from "next/link";
import { Section } from "@/app/_components/shell/section";
import { LinkButton } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { voteWords } from "@/lib/comfort-reports/thermal-sensation";
import type { Building } from "@/lib/services/buildings/find";
import type { ZoneHistory } from "@/lib/services/zones/history";
import { formatLocal, formatLocalDate } from "@/lib/time/format";

type Props = { history: ZoneHistory; building: Building; buildingPath: string };

/** Devices that stand in the zone and reports of the period shown. */
export function ZoneRecords({ history, building, buildingPath }: Props) {
  return (
    <>
      <Section
        id="devices"
        title="Devices here"
        wide
        action={
          <LinkButton href={`${buildingPath}/devices/new?zone=${encodeURIComponent(history.zone.code)}`}>
            Register a device here
          </LinkButton>
        }
      >
        <DataTable
          caption="Devices in this zone"
          captionHidden
          rows={history.devices}
          rowKey={(row) => row.id}
          columns={[
            {
              key: "label",
              head: "Device",
              names: true,
              cell: (row) => <Link href={`${buildingPath}/devices/${row.id}`}>{row.label}</Link>,
            },
            { key: "kind", head: "Kind", cell: (row) => row.kind.replace("-", " ") },
            {
              key: "found",
              head: "Found",
              cell: (row) => formatLocal(row.foundUtcSeconds * 1000, building.timeZone, "date"),
            },
          ]}
          empty={<p>No heater or fan is registered in this zone.</p>}
        />
      </Section>
      <Section id="reports" title="Reports in this period" wide>
        <DataTable
          caption="Comfort reports of the period"
          captionHidden
          rows={history.reports}
          rowKey={(row) => `${row.utcSeconds}-${row.desk}-${row.vote}-${row.note}`}
          columns={[
            {
              key: "at",
              head: "When",
              names: true,
              cell: (row) => formatLocal(row.utcSeconds * 1000, building.timeZone, "date-time"),
            },
            { key: "desk", head: "Desk", cell: (row) => row.desk ?? "" },
            { key: "vote", head: "Feels", cell: (row) => voteWords(row.vote) },
            { key: "note", head: "Note", cell: (row) => row.note },
          ]}
          empty={
            <p>
              No report in this period
              {history.newestReportOn ? (
                <>
                  ; the newest is of{" "}
                  <Link href={`?from=${history.newestReportOn}&days=1#reports`}>
                    {formatLocalDate(history.newestReportOn)}
                  </Link>
                </>
              ) : null}
              .
            </p>
          }
        />
      </Section>
    </>
  );
}
