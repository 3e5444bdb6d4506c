import { FieldSet } from "@/app/_components/ui/field-set";
import styles from "./report.module.css";

type Props = {
  name: string;
  legend: string;
  options: readonly { value: string; label: string; sign?: string }[];
  chosen?: string;
  error?: string;
  /** Beside each other instead of one a line: for three short words. */
  inRow?: boolean;
};

/** One of a few, each a line or a box that a thumb hits: radio buttons whose whole label is the target. */
export function TapChoice({ name, legend, options, chosen, error, inRow = false }: Props) {
  return (
    <FieldSet legend={legend} id={name} error={error}>
      <div className={inRow ? styles.row : styles.list}>
        {options.map(({ value, label, sign }) => (
          <label key={value} className={styles.target}>
            <input
              type="radio"
              name={name}
              value={value}
              aria-label={label}
              defaultChecked={chosen === value}
              className={styles.button}
            />
            <span>{label}</span>
            {sign ? (
              <span className={styles.sign} aria-hidden="true">
                {sign}
              </span>
            ) : null}
          </label>
        ))}
      </div>
    </FieldSet>
  );
}
