import { FieldSet } from "@/app/_components/ui/field-set";
import { ClothingPicture } from "./clothing-picture";
import styles from "./report.module.css";

type Props = {
  legend: string;
  /** Id of an ensemble and its words, lightest first. */
  options: readonly { id: string; label: string }[];
  notSaid: string;
  chosen?: string;
  error?: string;
};

/** What someone wears, by drawings with their words under them. */
export function ClothingChoice({ legend, options, notSaid, chosen = "", error }: Props) {
  return (
    <FieldSet legend={legend} id="clothing" error={error}>
      <div className={styles.pictures}>
        {[...options, { id: "", label: notSaid }].map(({ id, label }) => (
          <label key={id} className={styles.picture}>
            <input type="radio" name="clothing" value={id} defaultChecked={chosen === id} className={styles.button} />
            {id ? <ClothingPicture ensemble={id} /> : <span className={styles.noPicture} aria-hidden="true" />}
            <span>{label}</span>
          </label>
        ))}
      </div>
    </FieldSet>
  );
}
