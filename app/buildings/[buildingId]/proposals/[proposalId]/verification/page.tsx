import type { Metadata } from "next";
import Link from "next/link";
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
import { DetectableShare } from "../../_components/detectable-share";
import { ProofSums } from "../../_components/proof-sums";
import { ProofTable } from "../../_components/proof-table";
import { VerificationPlanForm, VerifyForm } from "../../_components/verification-forms";
import { planVerificationAction, verifyProposalAction } from "../../actions";
import { windowsSentence } from "../../change-words";
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
  const [latest, ...earlier] = results;
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
          {latest.result.by ? <p>{windowsSentence(latest.result.by)}</p> : null}
          <ProofTable
            proofs={latest.result.proofs}
            temperatureUnit={building.temperatureUnit}
            buildingPath={`/buildings/${id}`}
          />
          <ProofSums sums={latest.result.sums ?? []} currency={building.currency} buildingPath={`/buildings/${id}`} />
        </Section>
      ) : null}
      {earlier.length > 0 ? (
        <Section id="earlier" title="Worked out before">
          <DataTable
            caption="Earlier verifications, newest first"
            captionHidden
            rows={earlier}
            rowKey={(each) => each.id}
            columns={[
              {
                key: "at",
                head: "When",
                names: true,
                cell: (each) => formatLocal(each.enteredAtMs, building.timeZone, "date-time"),
              },
              { key: "verdict", head: "Verdict", cell: (each) => each.verdict.replace("-", " ") },
              { key: "by", head: "By", cell: (each) => each.enteredBy },
              {
                key: "windows",
                head: "Windows",
                cell: (each) => (each.result.by ? windowsSentence(each.result.by) : ""),
              },
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
            {meter ? <DetectableShare meter={meter} buildingPath={`/buildings/${id}`} /> : null}
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
