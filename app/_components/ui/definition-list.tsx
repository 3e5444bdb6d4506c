import type { ReactNode } from "react";
import styles from "./definition-list.module.css";

export type Definition = { term: string; value: ReactNode; note?: ReactNode };

/** Names and values of one thing, ruled like a title block. */
export function DefinitionList({ items }: { items: readonly Definition[] }) {
  return (
    <dl className={styles.list}>
      {items.map((item) => (
        <div key={item.term} className={styles.row}>
          <dt>{item.term}</dt>
          <dd>
            {item.value}
            {item.note ? <span className={styles.note}> {item.note}</span> : null}
          </dd>
        </div>
      ))}
    </dl>
  );
}
