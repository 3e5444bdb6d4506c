"use client";

import { SubmitButton } from "@/app/_components/ui/submit-button";
import { formatNumber } from "@/lib/units/format";
import type { PageCount } from "./mapping-form";
import styles from "./mapping-form.module.css";

/** Leads to the next rows and keeps what is entered on these. */
export function Pager({ page, count: { shown, pages, perPage } }: { page: number; count: PageCount }) {
  if (pages < 2) return null;
  const whole = (value: number) => formatNumber(value, { decimals: 0 });
  const last = Math.min(shown, page * perPage);
  return (
    <div className={styles.pager}>
      <span>
        Rows {whole((page - 1) * perPage + 1)} to {whole(last)} of {whole(shown)}
      </span>
      {page > 1 ? (
        <SubmitButton name="step" value={`page-${page - 1}`} kind="plain">
          Keep, and show those before
        </SubmitButton>
      ) : null}
      {page < pages ? (
        <SubmitButton name="step" value={`page-${page + 1}`} kind="plain">
          Keep, and show the next
        </SubmitButton>
      ) : null}
    </div>
  );
}
