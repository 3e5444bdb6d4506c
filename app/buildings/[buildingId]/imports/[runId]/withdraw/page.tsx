import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { LinkButton } from "@/app/_components/ui/button";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { readImportRun } from "@/lib/services/imports/history";
import { CANCELLABLE, whyNotUndone } from "@/lib/services/trend-imports/withdraw";
import { OneButtonForm } from "../../_components/one-button-form";
import { cancelImportAction, undoImportAction } from "../actions";
import { cancelLede, undoLede } from "../view-model";

export const metadata: Metadata = { title: "Withdraw an import" };

type Props = { params: Promise<{ buildingId: string; runId: string }> };

/** Asks before an import is cancelled or undone. Nothing happens by only coming here. */
export default async function WithdrawPage({ params }: Props) {
  const { buildingId, runId } = await params;
  const [id, run] = [Number(buildingId), Number(runId)];
  const path = `/buildings/${buildingId}/imports/${runId}`;
  const read = await readAs(async (ctx) => {
    const found = readImportRun(ctx, id, run, 1).run;
    const cancels = CANCELLABLE.includes(found.state);
    return { found, cancels, why: cancels ? null : await whyNotUndone(ctx, id, run) };
  }, `${path}/withdraw`);
  const { found, cancels, why } = read;
  if (why !== null) {
    return (
      <>
        <PageHeading title={`Undo the import of ${found.fileName}`} />
        <EmptyState action={<LinkButton href={path}>Back to the import</LinkButton>}>{why}</EmptyState>
      </>
    );
  }
  return cancels ? (
    <>
      <PageHeading title={`Cancel ${found.fileName}`} lede={cancelLede(found)} />
      <OneButtonForm
        action={cancelImportAction.bind(null, id, run)}
        label="Cancel the import"
        pendingLabel="Cancelling"
        beside={<LinkButton href={path}>Let it go on</LinkButton>}
      />
    </>
  ) : (
    <>
      <PageHeading title={`Undo the import of ${found.fileName}`} lede={undoLede(found)} />
      <OneButtonForm
        action={undoImportAction.bind(null, id, run)}
        label="Undo the import"
        pendingLabel="Undoing"
        beside={<LinkButton href={path}>Leave it as it is</LinkButton>}
      />
    </>
  );
}
