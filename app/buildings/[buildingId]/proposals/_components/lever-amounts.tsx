import { LEVER_SCALES, LEVERS } from "@/lib/proposals/lever";
import { amountField, nameField, VARIANT_PLACES } from "../form";
import styles from "./proposal.module.css";

type Props = {
  /** What stands in the form now: shown beside each slider. */
  values: Readonly<Record<string, string>>;
  /** What the form begins with, and goes back to when it is refused. */
  begin: Readonly<Record<string, string>>;
  errors: Readonly<Record<string, string>>;
};

/** One slider a lever and variant. A variant without a name is not used. */
export function LeverAmounts({ values, begin, errors }: Props) {
  return (
    <div className={styles.amounts}>
      <div className={styles.amountHead} aria-hidden="true">
        Lever
      </div>
      {VARIANT_PLACES.map((place) => (
        <div key={place} className={styles.variant}>
          <input
            className={styles.name}
            name={nameField(place)}
            id={nameField(place)}
            aria-label={`Name of variant ${place + 1}`}
            aria-invalid={errors[nameField(place)] ? true : undefined}
            placeholder="not used"
            defaultValue={begin[nameField(place)]}
          />
          <label className={styles.chosen}>
            <input type="radio" name="chosen" value={place} defaultChecked={begin.chosen === String(place)} /> proposed
            <span className="visually-hidden">, variant {place + 1}</span>
          </label>
          {errors[nameField(place)] ? <p className={styles.error}>{errors[nameField(place)]}</p> : null}
        </div>
      ))}
      {LEVERS.map((lever) => {
        const { label, amount, unit, least, most, step } = LEVER_SCALES[lever];
        return (
          <div key={lever} className={styles.leverRow}>
            <div className={styles.lever}>
              {label}
              <span className={styles.soft}>
                {" "}
                {amount}
                {unit ? `, ${unit}` : ""}
              </span>
            </div>
            {VARIANT_PLACES.map((place) => {
              const name = amountField(place, lever);
              return (
                <label key={place} className={styles.slider}>
                  <span className="visually-hidden">
                    {label}, variant {place + 1}
                  </span>
                  <input
                    type="range"
                    name={name}
                    min={least}
                    max={most}
                    step={step}
                    defaultValue={begin[name] ?? "0"}
                  />
                  <output className={styles.amount}>{values[name] ?? "0"}</output>
                </label>
              );
            })}
          </div>
        );
      })}
    </div>
  );
}
