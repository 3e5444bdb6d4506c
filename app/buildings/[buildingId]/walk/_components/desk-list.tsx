import type { WalkDesk } from "@/lib/services/walks/read";
import { isSeen, type LocalEntry } from "../view-model";
import styles from "./walk.module.css";

type Props = {
  desks: readonly WalkDesk[];
  made: readonly LocalEntry[];
  current: string | undefined;
  onGo: (deskCode: string) => void;
};

/** All desks of a floor, to go to one out of turn. */
export function DeskList({ desks, made, current, onGo }: Props) {
  return (
    <details className={styles.list}>
      <summary>Another desk</summary>
      <ul>
        {desks.map((desk) => (
          <li key={desk.code}>
            <button
              type="button"
              className={styles.deskButton}
              aria-current={desk.code === current ? "true" : undefined}
              onClick={() => onGo(desk.code)}
            >
              {desk.code}
              {isSeen(desk, made) ? <span className={styles.soft}> seen</span> : null}
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
