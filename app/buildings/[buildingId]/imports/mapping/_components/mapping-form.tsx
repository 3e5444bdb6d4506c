"use client";

import Link from "next/link";
import { useActionState, useEffect, useRef } from "react";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import type { BoundAction } from "@/app/_server/form-state";
import type { MappingSource } from "@/lib/services/trend-imports/mapping";
import type { MappingFilter } from "../filter";
import type { FileQuestion } from "../questions";
import type { MappingRow } from "../view-model";
import { BulkBar } from "./bulk-bar";
import { CautionBox } from "./caution-box";
import { FileQuestions } from "./file-questions";
import { FilterBar } from "./filter-bar";
import styles from "./mapping-form.module.css";
import { Pager } from "./pager";
import { PointTable } from "./point-table";
import { ProfileNames } from "./profile-names";

export type PageCount = { shown: number; all: number; pages: number; perPage: number };

type Props = {
  action: BoundAction;
  rows: readonly MappingRow[];
  filter: MappingFilter;
  count: PageCount;
  /** Proposals that can be accepted at once. */
  sure: number;
  lastStep: string | null;
  questions: readonly FileQuestion[];
  sources: readonly MappingSource[];
  cautions: { mark: string; sentences: string[] };
  zones: readonly { id: number; label: string }[];
  profilesPath: string;
};

/**
 * Every point of the waiting files in a line: what it is, where it belongs, what it holds. One form: whichever button
 * is pressed, what stands in the fields is kept.
 */
export function MappingForm({ action, rows, filter, count, sure, lastStep, zones, ...rest }: Props) {
  const [state, formAction] = useActionState(action, null);
  const failure = state?.ok === false ? state : undefined;
  const top = useRef<HTMLDivElement>(null);
  // The button stands a long way below what is said of it.
  useEffect(() => {
    if (failure) top.current?.scrollIntoView({ block: "start" });
  }, [failure]);
  return (
    <FormStack action={formAction} className={styles.wide}>
      <div ref={top}>
        <FormMessage message={failure?.formError} fieldErrors={failure?.fieldErrors} />
      </div>
      <FilterBar filter={filter} count={count} />
      <FileQuestions questions={rest.questions} errors={failure?.fieldErrors} />
      <BulkBar
        count={count}
        sure={sure}
        lastStep={lastStep}
        zones={zones}
        units={[...new Set(rows.flatMap((row) => row.unitChoices))]}
      />
      <PointTable rows={rows} zones={zones} errors={failure?.fieldErrors} />
      <Pager page={filter.page} count={count} />
      <CautionBox cautions={rest.cautions} error={failure?.fieldErrors.cautions} />
      <ProfileNames sources={rest.sources} />
      <FormActions>
        <SubmitButton name="step" value="confirm" pendingLabel="Importing">
          Confirm and import
        </SubmitButton>
        <SubmitButton name="step" value="keep" kind="plain">
          Keep what is entered
        </SubmitButton>
        <Link href={rest.profilesPath}>Mapping profiles</Link>
      </FormActions>
    </FormStack>
  );
}
