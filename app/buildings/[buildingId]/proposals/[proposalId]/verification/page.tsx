import type { Metadata } from "next";
import Link from "next/link";
import { formatFigure } from "@/app/_components/quantity/format-figure";
import { Range } from "@/app/_components/quantity/range";
import { WorkingDisclosure } from "@/app/_components/quantity/working-disclosure";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { PROOF_VERDICT_WORDS } from "@/lib/proposals/verification-plan";
import { readBuilding } from "@/lib/services/buildings/find";
import { readProposal } from "@/lib/services/proposals/find";
import { readVerificationPlan } from "@/lib/services/proposals/plan-verification";
import { readPromise } from "@/lib/services/proposals/promise";
import { readDetectability, readVerifications } from "@/lib/services/proposals/verify";
import { formatLocal } from "@/lib/time/format";
import { VerificationPlanForm, VerifyForm } from "../../_components/verification-forms";
import { planVerificationAction, verifyProposalAction } from "../../actions";
import { detectabilitySentence } from "../../change-words";
import { promiseSentence } from "../../promise-words";

export const metadata: Metadata = { title: "Verification" };

type Props = { params: Promise<{ buildingId: string; proposalId: string }> };

/** How a proposal is proved: windows, what they can show at all, and what was found. */
export default async function VerificationPage({ params }: Props) {
  const { buildingId, proposalId } = await params;
  const [id, number] = [Number(buildingId), Number(proposalId)];
  const path = `/buildings/${id}/proposals/${number}`;
  const { building, proposal, plan, results, meter, promise } = await readAs(
    async (ctx) => ({
      building: readBuilding(ctx, id),
      proposal: readProposal(ctx, id, number),
      plan: readVerificationPlan(ctx, id, number),
      results: readVerifications(ctx, id, number),
      meter: await readDetectability(ctx, id, number),
      promise: readPromise(ctx, id, number),
    }),
    `${path}/verification`,
  );
  const [latest] = results;
  const values: Record<string, string> = plan
    ? {
        method: plan.method,
        beforeFrom: plan.beforeFrom,
        beforeTo: plan.beforeTo,
        afterFrom: plan.afterFrom,
        afterTo: plan.afterTo,
      }
    : {};
  return (
    <>
      <PageHeading
        title={`Verification: ${proposal.row.title}`}
        lede={latest ? `${PROOF_VERDICT_WORDS[latest.verdict]}.` : "Nothing has been worked out yet."}
      />
      {latest ? (
        <Section
          id="found"
          title={`Found on ${formatLocal(latest.enteredAtMs, building.timeZone, "date-time")}`}
          wide
          action={<Link href={path}>The proposal</Link>}
        >
          <DataTable
            caption="What the data say, quantity by quantity"
            captionHidden
            rows={latest.result.proofs}
            rowKey={(proof) => proof.id}
            columns={[
              { key: "what", head: "Quantity", names: true, cell: (proof) => proof.label },
              { key: "unit", head: "Unit", cell: (proof) => proof.unit },
              { key: "before", head: "Before", align: "number", cell: (proof) => shown(proof.before) },
              { key: "after", head: "After", align: "number", cell: (proof) => shown(proof.after) },
              { key: "verdict", head: "Verdict", cell: (proof) => proof.verdict.replace("-", " ") },
              { key: "sentence", head: "In words", cell: (proof) => proof.sentence },
            ]}
          />
        </Section>
      ) : null}
      {promise ? (
        <Section id="promise" title="Promise and proof">
          <p>
            {promiseSentence(
              promise,
              latest?.result.proofs.find(({ id: quantity }) => quantity === "energy"),
            )}
          </p>
          <WorkingDisclosure working={promise.working} buildingPath={`/buildings/${id}`}>
            Promised of a day <Range range={promise} unit="kWh" />
          </WorkingDisclosure>
        </Section>
      ) : null}
      <Section id="plan" title="Plan">
        {proposal.issues.length === 0 ? (
          <EmptyState>Submit the proposal first: what is verified is the copy as issued.</EmptyState>
        ) : (
          <>
            {meter ? <p>{detectabilitySentence(meter)}</p> : null}
            <VerificationPlanForm
              action={planVerificationAction.bind(null, id, number)}
              values={values}
              hasSwitchback={proposal.row.plan.switchback !== null}
            />
            {plan ? <VerifyForm action={verifyProposalAction.bind(null, id, number)} /> : null}
          </>
        )}
      </Section>
    </>
  );
}

const shown = (value: number | null): string => (value === null ? "" : formatFigure(value, { significant: 4 }));
