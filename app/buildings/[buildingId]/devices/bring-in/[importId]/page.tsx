import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { DataTable } from "@/app/_components/ui/data-table";
import { readAs } from "@/app/_server/read";
import { DEVICE_CLASSES, deviceClassById } from "@/lib/electrical/device-classes";
import { readRegisterView } from "@/lib/services/registers/mapping";
import { readPlaces } from "@/lib/services/zones/places";
import { formatNumber } from "@/lib/units/format";
import { changeMappingAction, takeRegisterAction } from "../actions";
import { formFromMapping } from "../form";
import { fatesLede, shownFates } from "../view-model";
import { RegisterMappingForm, TakeForm } from "./_components/register-forms";

export const metadata: Metadata = { title: "Columns of a register" };

type Props = { params: Promise<{ buildingId: string; importId: string }> };

const LONGEST_PREVIEW = 50;

/** What the columns of a spreadsheet are, and what would become of each row. */
export default async function RegisterMappingPage({ params }: Props) {
  const { buildingId, importId } = await params;
  const ids = { buildingId: Number(buildingId), importId: Number(importId) };
  const path = `/buildings/${buildingId}/devices/bring-in`;
  const { view, places } = await readAs(
    async (ctx) => ({
      places: readPlaces(ctx, ids.buildingId),
      view: await readRegisterView(ctx, ids.buildingId, ids.importId),
    }),
    `${path}/${importId}`,
  );
  const { register, rows, fates, headings, sheets } = view;
  const isTaken = register.importRunId !== null;
  return (
    <>
      <PageHeading title={`Columns of ${register.fileName}`} lede={fatesLede(fates, isTaken)} />
      {isTaken ? (
        <p>
          <Link href={`/buildings/${buildingId}/imports/${register.importRunId}`}>
            The import with the fate of every row
          </Link>
        </p>
      ) : (
        <Section id="columns" title="What the columns are" action={<Link href={path}>Other files</Link>}>
          <RegisterMappingForm
            key={JSON.stringify(view.mapping)}
            action={changeMappingAction.bind(null, ids)}
            values={formFromMapping(view)}
            headings={headings.map((heading, at) => ({ value: String(at), label: heading || `column ${at + 1}` }))}
            sheets={sheets}
            zones={places.zones.map((zone) => ({ value: zone.code, label: zone.label }))}
            classes={DEVICE_CLASSES.map(({ id, label }) => ({ value: id, label }))}
          />
        </Section>
      )}
      <Section id="rows" title="What becomes of the rows" wide>
        {isTaken || rows.length === 0 ? null : (
          <TakeForm action={takeRegisterAction.bind(null, ids)} count={rows.length} />
        )}
        <DataTable
          caption="Rows that are changed, left out or cannot be taken"
          rows={shownFates(fates)}
          rowKey={(fate) => fate.line}
          columns={[
            { key: "line", head: "Line", align: "number", names: true, cell: (fate) => fate.line },
            { key: "fate", head: "Fate", cell: (fate) => fate.fate },
            { key: "why", head: "Why", cell: (fate) => fate.message },
          ]}
          empty={<p>Every row can be taken as it stands.</p>}
        />
        {isTaken ? null : (
          <DataTable
            caption={`Devices as they would be registered${rows.length > LONGEST_PREVIEW ? `, the first ${LONGEST_PREVIEW} of ${rows.length}` : ""}`}
            rows={rows.slice(0, LONGEST_PREVIEW)}
            rowKey={(row) => row.line}
            columns={[
              { key: "label", head: "Label", names: true, cell: (row) => row.label },
              { key: "sort", head: "Sort", cell: (row) => deviceClassById(row.deviceClass)?.label ?? "" },
              { key: "zone", head: "Zone", cell: (row) => row.zoneCode },
              { key: "desk", head: "Desk", cell: (row) => row.deskCode ?? "" },
              {
                key: "w",
                head: "Nameplate",
                unit: "W",
                align: "number",
                cell: (row) => (row.nameplateW === null ? "" : formatNumber(row.nameplateW, { decimals: 1 })),
              },
              {
                key: "measured",
                head: "Measured",
                unit: "W",
                align: "number",
                cell: (row) => (row.measuredW === null ? "" : formatNumber(row.measuredW, { decimals: 1 })),
              },
            ]}
            empty={<p>No row can be taken yet.</p>}
          />
        )}
      </Section>
    </>
  );
}
