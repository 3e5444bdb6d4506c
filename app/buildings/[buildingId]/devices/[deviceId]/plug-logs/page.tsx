import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Remark } from "@/app/_components/shell/remark";
import { Section } from "@/app/_components/shell/section";
import { Button } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { SelectField } from "@/app/_components/ui/select-field";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { readPlugLogs } from "@/lib/services/plug-logs/read";
import { formatNumber } from "@/lib/units/format";
import { RawDaysForm } from "./_components/raw-days-form";
import { changeRawDaysAction } from "./actions";
import { logLine } from "./view-model";

export const metadata: Metadata = { title: "Plug logs" };

type Props = {
  params: Promise<{ buildingId: string; deviceId: string }>;
  searchParams: Promise<Record<string, string | undefined>>;
};

const UNITS = ["W", "kW", "A", "mA", "Wh", "kWh"].map((unit) => ({ value: unit.toLowerCase(), label: unit }));

/** What a plug logger wrote of one device, and the form that brings its file in. */
export default async function PlugLogsPage({ params, searchParams }: Props) {
  const { buildingId, deviceId } = await params;
  const query = await searchParams;
  const id = Number(buildingId);
  const path = `/buildings/${id}/devices/${deviceId}`;
  const { building, device, logs, rawDays } = await readAs(
    (ctx) => ({ building: readBuilding(ctx, id), ...readPlugLogs(ctx, id, Number(deviceId)) }),
    `${path}/plug-logs`,
  );
  return (
    <>
      <PageHeading
        title={`Plug logs of ${device.label}`}
        lede="A logger between plug and outlet shows which settings are used, for how long, and when. Its file is reduced to those figures."
      />
      {query.problem ? (
        <Notice kind="caution" title="Not taken yet">
          <p>{query.problem}</p>
        </Notice>
      ) : null}
      <Section
        id="logs"
        title="Logs on record"
        wide
        action={<Link href={path}>Measurement sheet of {device.label}</Link>}
      >
        <DataTable
          caption="Plug logs"
          captionHidden
          rows={logs.map((log) => ({ ...logLine(log, building.timeZone), energyKwh: log.energyKwh }))}
          rowKey={(row) => row.id}
          columns={[
            {
              key: "span",
              head: "Readings",
              names: true,
              cell: (row) => <Link href={`${path}/plug-logs/${row.id}`}>{row.span}</Link>,
            },
            { key: "hours", head: "Logged", unit: "h", align: "number", cell: (row) => row.loggedHours },
            {
              key: "kwh",
              head: "Energy",
              unit: "kWh",
              align: "number",
              cell: (row) => formatNumber(row.energyKwh, { decimals: 3 }),
            },
            {
              key: "run",
              head: "Longest run at the highest level",
              unit: "h",
              align: "number",
              cell: (row) => row.longestRun,
            },
            { key: "raw", head: "Raw readings", cell: (row) => row.raw },
            { key: "file", head: "File", cell: (row) => row.fileName },
          ]}
          empty={
            <EmptyState>
              No log yet. Leave a plug logger on the device for two weeks, then bring its file in.
            </EmptyState>
          }
        />
      </Section>
      <Section
        id="bring-in"
        title="Bring in a logger's file"
        remarks={
          <>
            <Remark>
              Intervals show when someone was at a desk. What is kept of a file are its energy, hours by level, duty,
              longest run, use outside occupied hours, days and a profile of the day.
            </Remark>
            <Remark>
              A logger belongs into a wall outlet, rated for the heater. Never put one behind a power strip, and take it
              out when its case or plug grows hot.
            </Remark>
          </>
        }
      >
        <FormStack action={`${path}/plug-logs/upload`} method="post" encType="multipart/form-data">
          <Field
            name="file"
            label="File"
            type="file"
            accept=".csv,.txt,.gz"
            hint="CSV with a time and W, kW, A or kWh in each row, with or without headings, up to 60 MB; .gz is unpacked."
          />
          <FieldSet legend="Where the file does not say it" inline>
            <SelectField
              name="unit"
              label="Unit of its numbers"
              optional
              prompt="as its heading says"
              defaultValue={query.unit ?? ""}
              options={UNITS}
            />
            <SelectField
              name="dateOrder"
              label="Dates such as 08/05/2025"
              optional
              prompt="as the file shows"
              defaultValue={query.dateOrder ?? ""}
              options={[
                { value: "dmy", label: "day first" },
                { value: "mdy", label: "month first" },
              ]}
            />
            <SelectField
              name="energy"
              label="Energy readings"
              optional
              prompt="as the file shows"
              defaultValue={query.energy ?? ""}
              options={[
                { value: "counter", label: "a running total" },
                { value: "step", label: "energy of each step" },
              ]}
            />
          </FieldSet>
          <FormActions>
            <Button type="submit" kind="primary">
              Bring in
            </Button>
          </FormActions>
        </FormStack>
      </Section>
      <Section id="raw" title="How long raw readings are kept">
        <RawDaysForm action={changeRawDaysAction.bind(null, id)} days={rawDays} />
      </Section>
    </>
  );
}
