import type { ReactNode } from "react";
import type { Working } from "@/lib/working/working";
import styles from "./working-disclosure.module.css";
import { type FurtherWorkings, WorkingSheet } from "./working-sheet";

type Props = {
  working: Working;
  /** Path of the building's pages, `/buildings/{id}`. */
  buildingPath: string;
  open?: boolean;
  /** Where the terms are worked out, when not here. */
  further?: FurtherWorkings;
  /** The figure itself: a Quantity, Range or MoneyRange. */
  children: ReactNode;
};

/**
 * A figure that opens into its working in place. It is a block: put it in a div, dd or td, never in a p. In the rows
 * of a table use the table's `detail` with a WorkingSheet instead, which opens across the table.
 */
export function WorkingDisclosure({ working, buildingPath, open, further, children }: Props) {
  return (
    <details className={styles.details} open={open}>
      <summary>
        <span className={styles.figure}>{children}</span>
        <span className="visually-hidden">, show the working</span>
      </summary>
      <div className={styles.content}>
        <WorkingSheet working={working} buildingPath={buildingPath} further={further} />
      </div>
    </details>
  );
}
