import type { Metadata } from "next";
import Link from "next/link";
import { currencySign } from "@/app/_components/quantity/money-figure";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { PageShell } from "@/app/_components/shell/page-shell";
import { Section } from "@/app/_components/shell/section";
import { LinkButton } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { requireUser } from "@/app/_server/session";
import { SignOutForm } from "@/app/sign-in/sign-out-form";
import type { RollUpTotal } from "@/lib/business-case/roll-up";
import { readRollUp } from "@/lib/services/business-case/roll-up";
import { counted } from "@/lib/units/counted";
import { apartWords, cellWords, overlapWords, rangeInBrackets, totalWords } from "./view-model";

export const metadata: Metadata = { title: "Savings over all buildings" };

const STAGES = [
  { stage: "proposed", head: "Proposed" },
  { stage: "approved", head: "Approved" },
  { stage: "verified", head: "Verified" },
] as const;

export default async function SavingsPage() {
  const user = await requireUser("/buildings/savings");
  const { currencies, energy, overlaps } = await readAs(readRollUp, "/buildings/savings");
  const energyRows: { key: string; label: string; unit: string; total: RollUpTotal }[] = [
    { key: "electricity", label: "Electricity", unit: "kWh a year", total: energy.electricKwh },
    { key: "heat", label: "Heat", unit: "kWh a year", total: energy.heatKwh },
    { key: "emissions", label: "Emissions", unit: "kg CO₂ a year", total: energy.emissionsKgCo2 },
  ];
  return (
    <PageShell userName={user.name} signOut={<SignOutForm />}>
      <PageHeading
        title="Savings over all buildings"
        lede="First-year savings of proposals, as they were frozen at their issue: 80 % ranges, most likely in brackets. Each proposal stands in one column, the farthest that it has reached."
      />
      {currencies.length === 0 ? (
        <EmptyState action={<LinkButton href="/buildings">To the buildings</LinkButton>}>
          No proposal has been submitted yet. A proposal is made on a building&rsquo;s own pages, and counts here from
          its submission on.
        </EmptyState>
      ) : null}
      {currencies.map((each) => (
        <Section key={each.currency} id={each.currency} title={`In ${each.currency}, a year`} wide>
          <DataTable
            caption={`Savings by building, ${each.currency} a year`}
            captionHidden
            rows={each.rows}
            rowKey={(row) => row.buildingId}
            detail={(row) => ({
              summary: counted(row.proposals.length, "proposal"),
              content: (
                <ul>
                  {row.proposals.map(({ proposalId, title, stage, range, verification }) => (
                    <li key={proposalId}>
                      <Link href={`/buildings/${row.buildingId}/proposals/${proposalId}/case`}>{title}</Link>, {stage}:{" "}
                      {rangeInBrackets(range, currencySign(each.currency))}. {verification}
                    </li>
                  ))}
                </ul>
              ),
            })}
            columns={[
              {
                key: "building",
                head: "Building",
                names: true,
                cell: (row) => <Link href={`/buildings/${row.buildingId}/proposals`}>{row.buildingName}</Link>,
                total: "All of them",
              },
              ...STAGES.map(({ stage, head }) => ({
                key: stage,
                head,
                align: "number" as const,
                cell: (row: (typeof each.rows)[number]) => cellWords(row.stages[stage], each.currency),
                total: totalWords(each.total, stage, currencySign(each.currency)),
              })),
            ]}
          />
          <p>
            Ranges do not add up end by end: the sum is taken draw by draw. Assumptions that buildings share are drawn
            once for all of them, so that their errors do not cancel.
          </p>
          {apartWords(each).map((words) => (
            <p key={words}>{words}</p>
          ))}
        </Section>
      ))}
      {currencies.length > 0 ? (
        <Section id="energy" title="Energy and emissions of all buildings" wide>
          <DataTable
            caption="Energy and emissions saved, a year"
            captionHidden
            rows={energyRows}
            rowKey={(row) => row.key}
            columns={[
              { key: "what", head: "What", names: true, cell: (row) => row.label },
              { key: "unit", head: "Unit", cell: (row) => row.unit },
              ...STAGES.map(({ stage, head }) => ({
                key: stage,
                head,
                align: "number" as const,
                cell: (row: (typeof energyRows)[number]) => totalWords(row.total, stage),
              })),
            ]}
          />
          <p>
            Verified means that the newest verification of a proposal shows the effect; the figures stay those of its
            issue. What was measured stands with each proposal.
          </p>
        </Section>
      ) : null}
      {overlaps.length > 0 ? (
        <Section id="overlaps" title="Counted twice, perhaps" plain>
          <ul>
            {overlaps.map((each) => (
              <li key={overlapWords(each)}>{overlapWords(each)}</li>
            ))}
          </ul>
        </Section>
      ) : null}
    </PageShell>
  );
}
