import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { PageShell } from "@/app/_components/shell/page-shell";
import { LinkButton } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { requireUser } from "@/app/_server/session";
import { SignOutForm } from "@/app/sign-in/sign-out-form";
import { readBuildings } from "@/lib/services/buildings/find";
import { formatArea } from "@/lib/units/format";
import { SYSTEM_LABEL } from "./system-label";

export const metadata: Metadata = { title: "Buildings" };

export default async function BuildingsPage() {
  const user = await requireUser("/buildings");
  const buildings = await readAs(readBuildings, "/buildings");
  return (
    <PageShell userName={user.name} signOut={<SignOutForm />}>
      <PageHeading
        title="Buildings"
        lede="Each has a ledger of its own: zones, devices, trend logs, reports and the cost of overcooling."
      />
      <DataTable
        caption="Buildings"
        captionHidden
        rows={buildings}
        rowKey={(row) => row.id}
        columns={[
          {
            key: "name",
            head: "Building",
            names: true,
            cell: (row) => <Link href={`/buildings/${row.id}`}>{row.name}</Link>,
          },
          {
            key: "area",
            head: "Floor area",
            align: "number",
            cell: (row) => formatArea(row.floorAreaM2, row.areaUnit).text,
          },
          { key: "system", head: "System", cell: (row) => SYSTEM_LABEL[row.systemType] },
          { key: "zone", head: "Time zone", cell: (row) => row.timeZone },
        ]}
        empty={
          <EmptyState
            action={
              <LinkButton href="/buildings/new" kind="primary">
                Set up a building
              </LinkButton>
            }
          >
            No building yet. Its clock, prices and occupied hours come first; zones, trend logs and devices follow.
          </EmptyState>
        }
      />
      {buildings.length > 0 ? (
        <p>
          <LinkButton href="/buildings/new">Set up another building</LinkButton>{" "}
          <LinkButton href="/buildings/savings">Savings over all buildings</LinkButton>
        </p>
      ) : null}
    </PageShell>
  );
}
