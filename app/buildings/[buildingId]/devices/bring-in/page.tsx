import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Remark } from "@/app/_components/shell/remark";
import { Section } from "@/app/_components/shell/section";
import { Button } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { Field } from "@/app/_components/ui/field";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { REGISTER_TABLES } from "@/lib/services/exports/register-files";
import { readRegisterImports } from "@/lib/services/registers/mapping";
import { formatLocal } from "@/lib/time/format";

export const metadata: Metadata = { title: "Register in and out" };

type Props = { params: Promise<{ buildingId: string }>; searchParams: Promise<{ problem?: string }> };

/** An existing spreadsheet register on its way in, and this one on its way out. */
export default async function RegisterInOutPage({ params, searchParams }: Props) {
  const id = Number((await params).buildingId);
  const { problem } = await searchParams;
  const path = `/buildings/${id}/devices`;
  const { building, registers } = await readAs(
    (ctx) => ({ building: readBuilding(ctx, id), registers: readRegisterImports(ctx, id) }),
    `${path}/bring-in`,
  );
  return (
    <>
      <PageHeading
        title="Register in and out"
        lede="A spreadsheet that somebody kept comes in column by column; this register goes out as it stands."
      />
      {problem ? (
        <Notice kind="caution" title="Not taken">
          <p>{problem}</p>
        </Notice>
      ) : null}
      <Section
        id="in"
        title="Bring in a register"
        remarks={
          <Remark>
            Names and contacts of people are not needed and not read. Blank watts stay blank: such a device takes the
            usual values of its class, and says so.
          </Remark>
        }
      >
        <FormStack action={`${path}/bring-in/upload`} method="post" encType="multipart/form-data">
          <Field
            name="file"
            label="Spreadsheet"
            type="file"
            accept=".xlsx,.csv,.txt"
            hint="XLSX or CSV, up to 10 MB, a row a device. The next page asks what its columns are; nothing is registered before."
          />
          <FormActions>
            <Button type="submit" kind="primary">
              Look at its columns
            </Button>
          </FormActions>
        </FormStack>
        {registers.length > 0 ? (
          <DataTable
            caption="Files so far"
            rows={registers}
            rowKey={(row) => row.id}
            columns={[
              {
                key: "file",
                head: "File",
                names: true,
                cell: (row) => <Link href={`${path}/bring-in/${row.id}`}>{row.fileName}</Link>,
              },
              {
                key: "at",
                head: "Received",
                cell: (row) => `${formatLocal(row.receivedAtMs, building.timeZone, "date-time")} by ${row.receivedBy}`,
              },
              {
                key: "state",
                head: "State",
                cell: (row) =>
                  row.importRunId === null ? (
                    "columns to be mapped"
                  ) : (
                    <Link href={`/buildings/${id}/imports/${row.importRunId}`}>taken</Link>
                  ),
              },
            ]}
          />
        ) : null}
      </Section>
      <Section id="out" title="Take the register away">
        <p>
          <a href={`${path}/take-away`} download>
            Everything as a workbook (XLSX)
          </a>
          , with units in the headings and the origin beside every figure. As CSV:
        </p>
        <ul>
          {REGISTER_TABLES.map((table) => (
            <li key={table}>
              <a href={`${path}/take-away?${new URLSearchParams({ table })}`} download>
                {table}
              </a>
            </li>
          ))}
        </ul>
      </Section>
    </>
  );
}
