import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Remark } from "@/app/_components/shell/remark";
import { Section } from "@/app/_components/shell/section";
import { Button } from "@/app/_components/ui/button";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SelectField } from "@/app/_components/ui/select-field";
import { readAs } from "@/app/_server/read";
import { LABEL_SHEETS, labelsASheet } from "@/lib/services/labels/label-sheets";
import { readLabels } from "@/lib/services/labels/read";
import { readWalk } from "@/lib/services/walks/read";
import { counted } from "@/lib/units/counted";
import { MissingLinksForm } from "./_components/missing-links-form";
import { makeLinksAction } from "./actions";
import { choiceOfQuery, type LabelQuery } from "./choice";

export const metadata: Metadata = { title: "Labels" };

type Props = { params: Promise<{ buildingId: string }>; searchParams: Promise<LabelQuery> };

const KINDS = [
  { value: "devices", label: "Devices: the device's page" },
  { value: "desks", label: "Desks: the walk-through at this desk" },
  { value: "desk-reports", label: "Desks: the comfort report form" },
  { value: "zone-reports", label: "Zones: the comfort report form" },
];

/** Sheets of labels with a code each. The form leads here to count and to the sheet to print; both work without script. */
export default async function LabelsPage({ params, searchParams }: Props) {
  const id = Number((await params).buildingId);
  const query = await searchParams;
  const path = `/buildings/${id}/labels`;
  const { choice, sheet, skip } = choiceOfQuery(query);
  const { labels, missing, floors } = await readAs((ctx) => {
    const { desks } = readWalk(ctx, id);
    const floorNames = [...new Set(desks.map((desk) => desk.floor))].filter((floor) => floor !== "");
    return { ...readLabels(ctx, id, choice), floors: floorNames };
  }, path);
  const sheets = Math.ceil((labels.length + skip) / labelsASheet(sheet));
  return (
    <>
      <PageHeading
        title="Labels"
        lede={`${counted(labels.length, "label")} on ${counted(sheets, "sheet")}: ${sheet.label}.`}
      />
      <Section
        id="print"
        title="What to print"
        remarks={
          <>
            <Remark>
              Print at 100 %, without "fit to page", and hold a first sheet of plain paper against the labels.
            </Remark>
            <Remark>
              A code of a device or desk leads into this register, behind its sign-in. One of a report needs no account:
              whoever scans it can report for its place, and nothing else.
            </Remark>
          </>
        }
      >
        <FormStack action={path} method="get">
          <FieldSet legend="Labels" inline>
            <SelectField name="kind" label="Labels for" options={KINDS} defaultValue={choice.kind} />
            <SelectField
              name="floor"
              label="Floor"
              optional
              prompt="all floors"
              defaultValue={choice.floor}
              options={floors.map((floor) => ({ value: floor, label: floor }))}
            />
            <Field
              name="only"
              label="Only these"
              optional
              hint="Labels or codes, with commas."
              defaultValue={query.only ?? ""}
            />
          </FieldSet>
          <FieldSet legend="Paper" inline>
            <SelectField
              name="sheet"
              label="Sheet"
              defaultValue={sheet.id}
              options={LABEL_SHEETS.map((each) => ({ value: each.id, label: each.label }))}
            />
            <Field
              name="first"
              label="First label at place"
              inputMode="numeric"
              hint="1 is the upper left one."
              defaultValue={String(skip + 1)}
            />
          </FieldSet>
          <FormActions>
            <Button type="submit" kind="primary" formAction={`${path}/sheet`} formTarget="_blank">
              Open the sheet to print
            </Button>
            <Button type="submit">Count again</Button>
          </FormActions>
        </FormStack>
      </Section>
      {missing.length > 0 ? (
        <Section id="missing" title="Links that are missing">
          <MissingLinksForm
            action={makeLinksAction.bind(null, id)}
            missing={missing.length}
            choice={{ kind: choice.kind, floor: choice.floor, only: choice.only.join(",") }}
          />
        </Section>
      ) : null}
    </>
  );
}
