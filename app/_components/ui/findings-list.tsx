import type { ReactNode } from "react";
import type { Severity } from "@/lib/findings/finding";
import styles from "./findings-list.module.css";

export type FindingLine = {
  key: string;
  severity: Severity;
  /** What, where, how much. */
  sentence: ReactNode;
  /** What to do. */
  action?: ReactNode;
  /** What was read, when it was seen and what it was held against. */
  evidence?: ReactNode;
  /** What it stops, or that it stops nothing. */
  stops?: ReactNode;
};

/** Shape and word of a severity: none leans on colour. */
const MARK: Record<Severity, { shape: string; word: string }> = {
  note: { shape: "○", word: "Note" },
  caution: { shape: "△", word: "Caution" },
  disqualifies: { shape: "■", word: "Stops a result" },
};

const ORDER: Severity[] = ["disqualifies", "caution", "note"];

type Props = {
  findings: readonly FindingLine[];
  label: string;
  /** Shown when there is nothing to say. */
  none?: ReactNode;
};

/** A severity as shape and word. */
export function SeverityMark({ severity }: { severity: Severity }) {
  return (
    <>
      <span aria-hidden="true">{MARK[severity].shape}</span> {MARK[severity].word}
    </>
  );
}

/** Findings about data or devices, the gravest first. */
export function FindingsList({ findings, label, none }: Props) {
  if (findings.length === 0) return none ? <p>{none}</p> : null;
  const sorted = [...findings].sort((a, b) => ORDER.indexOf(a.severity) - ORDER.indexOf(b.severity));
  return (
    <ul className={styles.list} aria-label={label}>
      {sorted.map((finding) => (
        <li key={finding.key} className={styles.line}>
          <span className={styles.mark}>
            <SeverityMark severity={finding.severity} />
          </span>
          <span className={styles.text}>
            {finding.sentence}
            {finding.action ? <span className={styles.action}> {finding.action}</span> : null}
            {finding.evidence ? <span className={styles.evidence}> {finding.evidence}</span> : null}
            {finding.stops ? <span className={styles.stops}> {finding.stops}</span> : null}
          </span>
        </li>
      ))}
    </ul>
  );
}
