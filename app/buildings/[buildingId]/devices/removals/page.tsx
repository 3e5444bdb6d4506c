import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { today } from "@/app/_server/clock";
import { readAs } from "@/app/_server/read";
import type { RemovalPoint } from "@/lib/electrical/removal-history";
import { readBuilding } from "@/lib/services/buildings/find";
import { readRemovals } from "@/lib/services/devices/removals";
import { formatLocalDate } from "@/lib/time/format";
import { PresentLine } from "./_components/present-line";
import { percent, removalsLede, stepsOf } from "./view-model";

export const metadata: Metadata = { title: "Removed and come back" };

type Props = { params: Promise<{ buildingId: string }>; searchParams: Promise<{ kind?: string }> };

const counts = [
  { key: "found", head: "Found", of: (point: RemovalPoint) => String(point.found) },
  { key: "present", head: "In the building", of: (point: RemovalPoint) => String(point.present) },
  { key: "out", head: "Out", of: (point: RemovalPoint) => String(point.out) },
  { key: "fraction", head: "Removal fraction", unit: "%", of: (point: RemovalPoint) => percent(point.removalFraction) },
  { key: "ever", head: "Ever removed", of: (point: RemovalPoint) => String(point.everRemoved) },
  { key: "returned", head: "Returned", of: (point: RemovalPoint) => String(point.returned) },
  { key: "after", head: "Found after a removal", of: (point: RemovalPoint) => String(point.foundAfterRemoval) },
  { key: "rebound", head: "Rebound", unit: "%", of: (point: RemovalPoint) => percent(point.reboundFraction) },
] as const;

export default async function RemovalsPage({ params, searchParams }: Props) {
  const id = Number((await params).buildingId);
  const kind = (await searchParams).kind === "personal-fan" ? "personal-fan" : "space-heater";
  const noun = kind === "personal-fan" ? "fans" : "heaters";
  const path = `/buildings/${id}`;
  const { building, removals } = await readAs(
    (ctx) => ({ building: readBuilding(ctx, id), removals: readRemovals(ctx, id, kind) }),
    `${path}/devices/removals`,
  );
  const span = { from: removals.building[0]?.onDate ?? "", to: today(building.timeZone) };
  const most = Math.max(1, ...removals.zones.flatMap(({ points }) => points.map(({ present }) => present)));
  const rows = removals.zones.flatMap((zone) => {
    const last = zone.points.at(-1);
    return last ? { ...zone, last } : [];
  });
  return (
    <>
      <PageHeading title="Removed and come back" lede={removalsLede(removals.building, noun)} />
      <Section
        id="zones"
        title={`${noun.charAt(0).toUpperCase()}${noun.slice(1)} by zone`}
        wide
        action={
          <Link href={`${path}/devices/removals?kind=${kind === "personal-fan" ? "space-heater" : "personal-fan"}`}>
            {kind === "personal-fan" ? "Look at heaters" : "Look at fans"}
          </Link>
        }
        remarks={
          <p>
            Removal fraction: those out of the building among all that were ever found. Rebound: those that returned,
            and those found for the first time after the zone&apos;s first removal, for each that was ever removed. A
            zone whose cold was put right has none.
          </p>
        }
      >
        <DataTable
          caption="How each zone stands today"
          captionHidden
          rows={rows}
          rowKey={({ zoneId }) => zoneId}
          columns={[
            {
              key: "zone",
              head: "Zone",
              names: true,
              cell: ({ zoneId, zoneCode }) => <Link href={`${path}/zones/${zoneId}`}>{zoneCode}</Link>,
            },
            {
              key: "line",
              head: `${formatLocalDate(span.from)} to today`,
              cell: ({ points, zoneCode }) => (
                <PresentLine
                  steps={stepsOf(points, span)}
                  most={most}
                  label={`${noun} in the building over time, zone ${zoneCode}`}
                />
              ),
            },
            ...counts.map(({ of, ...column }) => ({
              ...column,
              align: "number" as const,
              cell: ({ last }: (typeof rows)[number]) => of(last),
            })),
          ]}
          detail={({ points, zoneCode }) => ({
            summary: `Over time, ${zoneCode}`,
            content: (
              <DataTable
                caption={`Zone ${zoneCode} by day of a step`}
                rows={points}
                rowKey={({ onDate }) => onDate}
                columns={[
                  { key: "on", head: "On", names: true, cell: ({ onDate }) => formatLocalDate(onDate) },
                  ...counts.map(({ of, ...column }) => ({ ...column, align: "number" as const, cell: of })),
                ]}
              />
            ),
          })}
          empty={<EmptyState>{`No ${noun} on the register yet.`}</EmptyState>}
        />
      </Section>
    </>
  );
}
