import Link from "next/link";
import type { ReactNode } from "react";
import { type DataColumn, DataTable } from "@/app/_components/ui/data-table";
import type { Term, Working } from "@/lib/working/working";
import { formatFigure, spanWords } from "./format-figure";
import { Formula, FormulaLine, FormulaSymbol } from "./formula";
import { Quantity } from "./quantity";
import { substitutedParts } from "./substituted-parts";
import { termFigures, workingDigits } from "./working-figures";
import styles from "./working-sheet.module.css";

type Props = {
  working: Working;
  /** Path of the building's pages, `/buildings/{id}`: links to readings and assumptions start with it. */
  buildingPath: string;
  /** Where the workings of the terms are opened when they are not written out here; without it they all are. */
  further?: FurtherWorkings;
  /** Given what stands in the disclosures of terms, to draw it later or otherwise. */
  wrap?: (content: ReactNode) => ReactNode;
};

/**
 * A page that opens the workings of terms: `page` is its address, `at` the place of this working in the whole, and
 * `levels` how many levels are still written out in place. A building's whole working has thousands of sheets.
 */
export type FurtherWorkings = { page: string; at: readonly number[]; levels: number };

/** A working written out: formula, values put in, result, the table of terms with origin and source, notes. */
export function WorkingSheet({ working, buildingPath, further, wrap = asItIs }: Props) {
  const { formula, terms, result, notes = [], source } = working;
  const substituted = substitutedParts(working);
  const symbols = [...terms.map((term) => term.symbol), result.symbol];
  return (
    <div className={styles.sheet}>
      <div className={styles.formula}>
        <Formula formula={formula} symbols={symbols} />
        {substituted ? (
          <span className={styles.step}>
            {" = "}
            <FormulaLine parts={substituted} />
          </span>
        ) : null}
        <span className={styles.step}>
          {substituted ? " = " : <FormulaSymbol symbol={result.symbol} />}
          {substituted ? null : " = "}
          <strong>
            <Quantity value={result.value} unit={result.unit} digits={workingDigits(result.unit)} />
          </strong>
          <span className={styles.what}> {result.label}</span>
        </span>
      </div>
      {terms.length > 0 ? (
        <DataTable
          caption={`Terms of ${result.label}`}
          captionHidden
          columns={
            further && further.levels < 1
              ? linkedColumns(working, buildingPath, further)
              : termColumns(working, buildingPath)
          }
          rows={terms}
          rowKey={(term) => term.symbol}
          detail={
            terms.some((term) => term.working) && !(further && further.levels < 1)
              ? (term) =>
                  term.working
                    ? {
                        summary: "Working",
                        content: wrap(
                          <WorkingSheet
                            working={term.working}
                            buildingPath={buildingPath}
                            further={further && below(further, terms.indexOf(term))}
                            wrap={wrap}
                          />,
                        ),
                      }
                    : null
              : undefined
          }
        />
      ) : null}
      {notes.map((note) => (
        <p key={note} className={styles.note}>
          {note}
        </p>
      ))}
      {source ? <p className={styles.note}>Formula: {source}</p> : null}
    </div>
  );
}

const asItIs = (content: ReactNode): ReactNode => content;

const below = (further: FurtherWorkings, index: number): FurtherWorkings => ({
  page: further.page,
  at: [...further.at, index],
  levels: further.levels - 1,
});

/** The columns of the terms, each with the address of its own working instead of the working itself. */
function linkedColumns(working: Working, buildingPath: string, further: FurtherWorkings): DataColumn<Term>[] {
  const { terms } = working;
  if (!terms.some((term) => term.working)) return termColumns(working, buildingPath);
  const cell = (term: Term): ReactNode =>
    term.working ? (
      <Link href={`${further.page}?at=${below(further, terms.indexOf(term)).at.join(".")}`} prefetch={false}>
        Working<span className="visually-hidden"> of {term.label}</span>
      </Link>
    ) : null;
  return [...termColumns(working, buildingPath), { key: "working", head: "Worked out", cell }];
}

function termColumns(working: Working, buildingPath: string): DataColumn<Term>[] {
  const figures = termFigures(working);
  return [
    { key: "symbol", head: "Term", names: true, cell: (term) => <FormulaSymbol symbol={term.symbol} /> },
    { key: "label", head: "What", cell: (term) => term.label },
    { key: "value", head: "Value", align: "number", cell: (term) => figures[working.terms.indexOf(term)] },
    { key: "unit", head: "Unit", cell: (term) => term.unit || "\u2013" },
    { key: "range", head: "Range", align: "number", cell: termRange },
    { key: "origin", head: "Origin", cell: (term) => term.origin },
    { key: "source", head: "Source", cell: (term) => termSource(term, buildingPath) },
  ];
}

function termRange({ low, high }: Term): string {
  if (low === undefined || high === undefined) return "";
  return spanWords(formatFigure(low, { significant: 4 }), formatFigure(high, { significant: 4 }));
}

function termSource(term: Term, buildingPath: string): ReactNode {
  if (term.assumptionId) {
    return <Link href={`${buildingPath}/assumptions#${term.assumptionId}`}>{term.source ?? "assumption"}</Link>;
  }
  if (term.href) return <Link href={buildingPath + term.href}>{term.source ?? "readings"}</Link>;
  return term.source ?? "";
}
