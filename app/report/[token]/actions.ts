"use server";

import { redirect } from "next/navigation";
import { clientAddress } from "@/app/_server/client-address";
import { type FormState, postedValues } from "@/app/_server/form-state";
import { noteReportFrom } from "@/app/_server/report-senders";
import { runAction } from "@/app/_server/run-action";
import { fileComfortReport } from "@/lib/services/comfort-reports/file";
import { chooseLanguage } from "../messages/choose-language";
import { failureInWords, reportFromForm } from "./form-values";

/** Files a report and leads to its receipt; what is refused is said in the language of the form, with what was entered. */
export async function fileReportAction(token: string, _: FormState, form: FormData): Promise<FormState> {
  const values = postedValues(form);
  const messages = chooseLanguage(values.language, null);
  const address = await clientAddress();
  const outcome = await runAction(form, (ctx) =>
    fileComfortReport(ctx, token, reportFromForm(values), address === null ? null : noteReportFrom(address, ctx.now)),
  );
  if (!outcome.ok) return failureInWords(outcome, messages);
  const filed = outcome.result;
  if (filed.status === "link-ended" || filed.status === "refused")
    return {
      ok: false,
      values,
      fieldErrors: {},
      formError: filed.status === "refused" ? messages.errors.flood : `${messages.ended.title}. ${messages.ended.lede}`,
    };
  redirect(`/report/follow/${filed.followToken}?new=1`);
}
