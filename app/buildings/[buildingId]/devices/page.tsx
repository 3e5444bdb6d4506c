import type { Metadata } from "next";
import Link from "next/link";
import { currencySign } from "@/app/_components/quantity/money-figure";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { LinkButton } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { readBuilding } from "@/lib/services/buildings/find";
import { readDevices } from "@/lib/services/devices/read";
import { formatLocalDate } from "@/lib/time/format";
import { formatNumber } from "@/lib/units/format";
import { FieldLinks } from "./_components/field-links";
import { basesOf, registerLede, totalFigures } from "./view-model";

export const metadata: Metadata = { title: "Devices" };

type Props = { params: Promise<{ buildingId: string }> };

export default async function DevicesPage({ params }: Props) {
  const id = Number((await params).buildingId);
  const path = `/buildings/${id}`;
  const { building, devices } = await readAs(
    (ctx) => ({ building: readBuilding(ctx, id), devices: readDevices(ctx, id) }),
    `${path}/devices`,
  );
  const register = (
    <LinkButton kind="primary" href={`${path}/devices/new`}>
      Register a device
    </LinkButton>
  );
  return (
    <>
      <PageHeading title="Devices" lede={registerLede(devices)}>
        <FieldLinks buildingPath={path} />
      </PageHeading>
      <Section id="register" title="Register" wide action={devices.length > 0 ? register : null}>
        <DataTable
          caption="Heaters and fans"
          captionHidden
          rows={devices}
          rowKey={(row) => row.id}
          columns={[
            {
              key: "label",
              head: "Device",
              names: true,
              cell: (row) => <Link href={`${path}/devices/${row.id}`}>{row.label}</Link>,
            },
            { key: "sort", head: "Sort", cell: (row) => deviceClassById(row.deviceClass)?.label ?? row.deviceClass },
            {
              key: "zone",
              head: "Zone",
              cell: (row) => <Link href={`${path}/zones/${row.zoneId}`}>{row.zoneCode}</Link>,
            },
            { key: "desk", head: "Desk", cell: (row) => row.deskCode ?? "" },
            {
              key: "high",
              head: "Highest setting",
              unit: "W",
              align: "number",
              cell: (row) => formatNumber(row.sheet.highPowerW, { decimals: 0 }),
            },
            {
              key: "kwh",
              head: "Energy a year",
              unit: "kWh",
              align: "number",
              cell: (row) => totalFigures(row.sheet).energyKwh,
            },
            {
              key: "cost",
              head: "Cost a year",
              unit: currencySign(building.currency).trim(),
              align: "number",
              cell: (row) => totalFigures(row.sheet).cost,
            },
            { key: "basis", head: "Known by", cell: basesOf },
            {
              key: "state",
              head: "State",
              cell: (row) => (row.retiredOn ? `retired ${formatLocalDate(row.retiredOn)}` : "in use"),
            },
          ]}
          empty={
            <EmptyState action={register}>
              No device yet. Walk the zones with a meter and register what stands under the desks.
            </EmptyState>
          }
        />
      </Section>
    </>
  );
}
