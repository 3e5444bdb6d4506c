import type { Metadata } from "next";
import Link from "next/link";
import { currencySign, MoneyRange } from "@/app/_components/quantity/money-figure";
import { RangeBar } from "@/app/_components/quantity/range-bar";
import { WorkingDisclosure } from "@/app/_components/quantity/working-disclosure";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { LinkButton } from "@/app/_components/ui/button";
import { DefinitionList } from "@/app/_components/ui/definition-list";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { currencyDecimals } from "@/lib/money/money";
import { printProgram } from "@/lib/services/business-case/print-pdf";
import { countIssues, readBusinessCaseWithFinance } from "@/lib/services/business-case/read";
import { formatLocal } from "@/lib/time/format";
import { askedIssue } from "./asked-issue";
import { financeItems, statedWords } from "./view-model";

export const metadata: Metadata = { title: "Business case" };

type Props = {
  params: Promise<{ buildingId: string; proposalId: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
};

const TABLES = ["components", "cash-flow", "finance", "assumptions"] as const;

export default async function CasePage({ params, searchParams }: Props) {
  const { buildingId, proposalId } = await params;
  const buildingPath = `/buildings/${Number(buildingId)}`;
  const proposalPath = `${buildingPath}/proposals/${Number(proposalId)}`;
  const path = `${proposalPath}/case`;
  const { issue } = askedIssue(await searchParams);
  const { issues, read } = await readAs((ctx) => {
    const issues = countIssues(ctx, Number(buildingId), Number(proposalId));
    const read = issues > 0 ? readBusinessCaseWithFinance(ctx, Number(buildingId), Number(proposalId), issue) : null;
    return { issues, read };
  }, path);
  if (!read)
    return (
      <>
        <PageHeading title="Business case" />
        <EmptyState action={<LinkButton href={proposalPath}>To the proposal</LinkButton>}>
          A business case is made from the figures that are frozen when a proposal is submitted. This one has not been
          submitted yet.
        </EmptyState>
      </>
    );
  const { input, finance, workings } = read;
  const { building, saving } = input;
  const minor = 10 ** currencyDecimals(building.currency);
  const inMinor = ({ p10, p50, p90 }: { p10: number; p50: number; p90: number }) => ({
    p10: p10 * minor,
    p50: p50 * minor,
    p90: p90 * minor,
  });
  const of = `issue=${read.issue}`;
  const saved = (
    <MoneyRange minorUnits={inMinor(saving)} currency={building.currency} per="in the first year" headline />
  );
  return (
    <>
      <PageHeading
        title={`Business case ${input.number}: ${input.proposal.title}`}
        figure={
          saving.working ? (
            <WorkingDisclosure working={saving.working} buildingPath={buildingPath}>
              {saved}
            </WorkingDisclosure>
          ) : (
            saved
          )
        }
        lede={`Issued ${formatLocal(input.issuedAtMs, building.timeZone, "date")} by ${input.issuedBy}. Figures and assumptions are those of that day; printed again, the document reads the same.`}
      >
        <RangeBar
          label="Saving in the first year"
          range={saving}
          unit=""
          per="in the first year"
          prefix={currencySign(building.currency)}
          scale={{ min: Math.min(0, saving.p10), max: Math.max(0, saving.p90 * 1.15) }}
        />
        <DefinitionList
          items={[
            {
              term: "Net present value",
              value: <MoneyRange minorUnits={inMinor(finance.ranges.netPresentValue)} currency={building.currency} />,
            },
            ...financeItems(finance),
          ]}
        />
      </PageHeading>
      <Section id="finance" title="Finance at stated values" wide>
        <p>
          The ranges above are over the draws of the saving and of the life of the change. These figures have every
          input at its stated value, and open into their working.
        </p>
        {workings.map(({ title, working }) => (
          <div key={title}>
            <WorkingDisclosure working={working} buildingPath={buildingPath}>
              {statedWords(title, working, building.currency)}
            </WorkingDisclosure>
          </div>
        ))}
      </Section>
      <Section id="document" title="The document" plain>
        <p>
          A page of summary for whoever signs, then method, components, alternatives, comfort and risk, cautions,
          finance, emissions, sensitivity and verification, with every assumption and working at its end.
        </p>
        <p>
          <LinkButton href={`${path}/document?${of}`} kind="primary">
            Read and print, A4
          </LinkButton>{" "}
          <LinkButton href={`${path}/document?${of}&paper=letter`}>Read and print, Letter</LinkButton>
        </p>
        {printProgram() === null ? (
          <p>This server has no program that makes a PDF: print the document to a file with your browser instead.</p>
        ) : (
          <p>
            PDF: <a href={`${path}/take-away?form=pdf&${of}`}>A4</a>,{" "}
            <a href={`${path}/take-away?form=pdf&${of}&paper=letter`}>Letter</a>
          </p>
        )}
        <p>
          <a href={`${path}/take-away?form=xlsx&${of}`}>Workbook (XLSX)</a> whose formulas recompute the totals from the
          inputs. Tables as CSV:{" "}
          {TABLES.map((table, at) => (
            <span key={table}>
              {at > 0 ? ", " : ""}
              <a href={`${path}/take-away?form=csv&table=${table}&${of}`}>{table.replace("-", " ")}</a>
            </span>
          ))}
          .
        </p>
      </Section>
      {issues > 1 ? (
        <Section id="issues" title="Issues" plain>
          <ul>
            {Array.from({ length: issues }, (_, at) => issues - at).map((number) => (
              <li key={number}>
                {number === read.issue ? (
                  `Issue ${number}, shown here`
                ) : (
                  <Link href={`${path}?issue=${number}`}>Issue {number}</Link>
                )}
              </li>
            ))}
          </ul>
        </Section>
      ) : null}
    </>
  );
}
