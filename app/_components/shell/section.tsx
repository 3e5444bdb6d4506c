import type { ReactNode } from "react";
import styles from "./section.module.css";

type Props = {
  /** Anchor of the section. */
  id?: string;
  title?: string;
  /** A control that belongs to the section, at the end of its title line. */
  action?: ReactNode;
  /** Remarks in the margin beside the section; on narrow screens they follow its content. No remarks, no margin. */
  remarks?: ReactNode;
  /** Takes the margin column as well: for tables and charts that need the width. */
  wide?: boolean;
  /** Remarks follow below, without a margin column. */
  plain?: boolean;
  children: ReactNode;
};

/** A stretch of the ledger: ruled title line, content, and the margin with its remarks. */
export function Section({ id, title, action, remarks, wide = false, plain = false, children }: Props) {
  const heading = id ? `${id}-heading` : undefined;
  const inMargin = Boolean(remarks) && !wide && !plain;
  return (
    <section
      id={id}
      aria-labelledby={title ? heading : undefined}
      className={`${styles.section} ${inMargin ? styles.withMargin : ""}`}
    >
      <div className={styles.main}>
        {title ? (
          <div className={styles.titleLine}>
            <h2 id={heading}>{title}</h2>
            {action ? <div className={styles.action}>{action}</div> : null}
          </div>
        ) : null}
        {children}
      </div>
      {remarks ? <div className={inMargin ? styles.margin : styles.below}>{remarks}</div> : null}
    </section>
  );
}
