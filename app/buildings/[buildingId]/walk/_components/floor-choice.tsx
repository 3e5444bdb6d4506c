import type { WalkDesk } from "@/lib/services/walks/read";
import { floorLines, floorName, type LocalEntry } from "../view-model";
import styles from "./walk.module.css";

type Props = { desks: readonly WalkDesk[]; made: readonly LocalEntry[]; onChoose: (floor: string) => void };

/** Floors with how far each is. */
export function FloorChoice({ desks, made, onChoose }: Props) {
  return (
    <nav aria-label="Floors">
      <ul className={styles.choices}>
        {floorLines(desks, made).map(({ floor, done, of }) => (
          <li key={floor}>
            <button type="button" className={styles.choice} onClick={() => onChoose(floor)}>
              <span>{floorName(floor)}</span>
              <span className={styles.count}>
                {done} of {of}
              </span>
            </button>
          </li>
        ))}
      </ul>
    </nav>
  );
}
