import type { Metadata } from "next";
import Link from "next/link";
import { currencySign } from "@/app/_components/quantity/money-figure";
import { WorkingDisclosure } from "@/app/_components/quantity/working-disclosure";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { LinkButton } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { Pager } from "@/app/_components/ui/pager";
import { today } from "@/app/_server/clock";
import { readAs } from "@/app/_server/read";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { statusLabel } from "@/lib/electrical/device-status";
import { readBuilding } from "@/lib/services/buildings/find";
import { readRegister } from "@/lib/services/devices/list/read-register";
import { REGISTER_GROUPS, type RegisterSort, registerQuery } from "@/lib/services/devices/list/register-query";
import { formatLocalDate } from "@/lib/time/format";
import { formatNumber } from "@/lib/units/format";
import { FieldLinks } from "./_components/field-links";
import { RegisterFilter } from "./_components/register-filter";
import {
  groupAddress,
  groupLabel,
  groupNoun,
  inspectionWords,
  registerAddress,
  registerLede,
  rowFigures,
  shareOf,
  sortAddress,
  sortMark,
  totalSentence,
} from "./register-view-model";
import { originOf } from "./view-model";

export const metadata: Metadata = { title: "Devices" };

type Props = { params: Promise<{ buildingId: string }>; searchParams: Promise<Record<string, string | undefined>> };

const unbroken = (words: string): string => words.replaceAll(" ", "\u00a0");

const SORTS: readonly { sort: RegisterSort; label: string }[] = [
  { sort: "label", label: "label" },
  { sort: "zone", label: "zone" },
  { sort: "class", label: "sort" },
  { sort: "power", label: "power" },
  { sort: "energy", label: "energy" },
  { sort: "cost", label: "cost" },
  { sort: "status", label: "status" },
  { sort: "found", label: "day found" },
];

export default async function DevicesPage({ params, searchParams }: Props) {
  const id = Number((await params).buildingId);
  const query = registerQuery(await searchParams);
  const path = `/buildings/${id}/devices`;
  const { building, part } = await readAs(
    (ctx) => ({ building: readBuilding(ctx, id), part: readRegister(ctx, id, query) }),
    registerAddress(path, query),
  );
  const day = today(building.timeZone);
  const sign = currencySign(building.currency).trim();
  const isEmpty = part.all.devices + part.all.removed === 0;
  const { group } = query;
  const total = rowFigures(part.totals);
  const register = (
    <LinkButton kind="primary" href={`${path}/new`}>
      Register a device
    </LinkButton>
  );
  return (
    <>
      <PageHeading title="Devices" lede={registerLede(part)}>
        <p>
          <Link href={`${path}/circuits`}>Circuits</Link> · <Link href={`${path}/removals`}>Removed and come back</Link>
        </p>
        <FieldLinks buildingPath={`/buildings/${id}`} />
      </PageHeading>
      <Section id="register" title="Register" wide action={isEmpty ? null : register}>
        {isEmpty ? null : (
          <RegisterFilter
            path={path}
            query={query}
            choices={part.choices}
            originOf={originOf}
            groups={REGISTER_GROUPS.map((value) => ({ value, label: groupNoun[value].toLowerCase() }))}
          />
        )}
        {isEmpty ? null : (
          <p>
            {"Ordered by "}
            {SORTS.map(({ sort, label }, index) => (
              <span key={sort}>
                {index > 0 ? ", " : ""}
                <Link href={sortAddress(path, query, sort)} aria-current={query.sort === sort ? "true" : undefined}>
                  {`${label}${sortMark(query, sort)}`}
                </Link>
              </span>
            ))}
          </p>
        )}
        {group ? (
          <DataTable
            caption={`By ${groupNoun[group].toLowerCase()}`}
            rows={part.groups}
            rowKey={({ key }) => key}
            columns={[
              {
                key: "group",
                head: groupNoun[group],
                names: true,
                cell: ({ key }) => {
                  const href = groupAddress(path, query, group, key);
                  return href ? <Link href={href}>{groupLabel(group, key)}</Link> : groupLabel(group, key);
                },
              },
              { key: "devices", head: "In use", align: "number", cell: ({ totals }) => String(totals.devices) },
              {
                key: "kwh",
                head: "Energy a year",
                unit: "kWh",
                align: "number",
                cell: ({ totals }) => rowFigures(totals).energyKwh,
              },
              {
                key: "cost",
                head: "Cost a year",
                unit: sign,
                align: "number",
                cell: ({ totals }) => rowFigures(totals).cost,
              },
              {
                key: "share",
                head: "Share",
                unit: "%",
                align: "number",
                cell: ({ totals }) => shareOf(totals, part.totals),
              },
            ]}
          />
        ) : null}
        <DataTable
          caption="Heaters and fans"
          captionHidden
          rows={part.rows}
          rowKey={(row) => row.id}
          columns={[
            {
              key: "label",
              head: "Device",
              names: true,
              cell: (row) => (
                <Link href={`${path}/${row.id}`} prefetch={false}>
                  {row.label}
                </Link>
              ),
              total: "All",
            },
            { key: "sort", head: "Sort", cell: (row) => deviceClassById(row.deviceClass)?.label ?? row.deviceClass },
            {
              key: "zone",
              head: "Zone",
              cell: (row) => (
                <Link href={`/buildings/${id}/zones/${row.zoneId}`} prefetch={false}>
                  {row.zoneCode}
                </Link>
              ),
            },
            { key: "floor", head: "Floor", cell: (row) => row.floor },
            { key: "desk", head: "Desk", cell: (row) => row.deskCode },
            {
              key: "high",
              head: "Highest setting",
              unit: "W",
              align: "number",
              cell: (row) => formatNumber(row.highPowerW, { decimals: 0 }),
            },
            {
              key: "kwh",
              head: "Energy a year",
              unit: "kWh",
              align: "number",
              cell: (row) => rowFigures(row).energyKwh,
              total: total.energyKwh,
            },
            {
              key: "cost",
              head: "Cost a year",
              unit: sign,
              align: "number",
              cell: (row) => rowFigures(row).cost,
              total: total.cost,
            },
            { key: "basis", head: "Known by", cell: (row) => unbroken(originOf(row.origin)) },
            {
              key: "state",
              head: "Status",
              cell: (row) =>
                row.retiredOn
                  ? `${statusLabel(row.status)} ${formatLocalDate(row.retiredOn)}`
                  : statusLabel(row.status),
            },
            { key: "condition", head: "Inspection", cell: (row) => unbroken(inspectionWords(row, day)) },
          ]}
          empty={
            isEmpty ? (
              <EmptyState action={register}>
                No device yet. Walk the zones with a meter and register what stands under the desks.
              </EmptyState>
            ) : (
              <EmptyState action={<Link href={path}>Show what is in the building</Link>}>
                No device of the register is let through by these choices.
              </EmptyState>
            )
          }
        />
        <Pager
          many="devices"
          page={part.page}
          pages={part.pages}
          first={part.first}
          shown={part.rows.length}
          count={part.count}
          href={(page) => registerAddress(path, { ...query, page })}
        />
        {part.totals.devices > 0 ? (
          <>
            <p>{totalSentence(part)}</p>
            <WorkingDisclosure working={part.workings.cost} buildingPath={`/buildings/${id}`}>
              How the total comes about
            </WorkingDisclosure>
          </>
        ) : null}
      </Section>
    </>
  );
}
