import type { ReactNode } from "react";
import styles from "./empty-state.module.css";

type Props = {
  /** What belongs here, in one sentence. */
  children: ReactNode;
  /** The one step to begin: a LinkButton or a Button. */
  action?: ReactNode;
};

/** Stands where nothing has been entered yet. */
export function EmptyState({ children, action }: Props) {
  return (
    <div className={styles.empty}>
      <p>{children}</p>
      {action ? <div>{action}</div> : null}
    </div>
  );
}
