import { LEVER_SCALES } from "@/lib/proposals/lever";
import {
  amountField,
  chosenPairs,
  nameField,
  ownAmountField,
  usedPlaces,
  VARIANT_PLACES,
  type ZonePair,
} from "../form";
import type { FormValues, ZoneChoice } from "../view-model";
import styles from "./proposal.module.css";

type Props = {
  zones: readonly ZoneChoice[];
  /** What stands in the form now: which zones have which lever, and the variants' amounts. */
  values: FormValues;
  /** What the form begins with, and goes back to when it is refused. */
  begin: FormValues;
  errors: Readonly<Record<string, string>>;
  idle: ReadonlyMap<string, string>;
  /** Zones and levers that were ticked at any time: a zone that is taken away keeps its fields out of sight. */
  pairs: readonly ZonePair[];
};

/** Amounts of single zones: a field for each zone with a lever and each variant; an empty one takes the variant's amount. */
export function ZoneAmounts({ zones, values, begin, errors, idle, pairs }: Props) {
  const places = VARIANT_PLACES.filter((place) => usedPlaces(values).includes(place));
  const now = chosenPairs(values);
  const isNow = new Set(now.map(({ zoneId, lever }) => `${zoneId}/${lever}`));
  const order = new Map(zones.map(({ zoneId }, k) => [zoneId, k]));
  const rows = pairs.toSorted((a, b) => (order.get(a.zoneId) ?? 0) - (order.get(b.zoneId) ?? 0));
  const codes = new Map(zones.map(({ zoneId, code }) => [zoneId, code]));
  if (pairs.length === 0) return <p className={styles.soft}>No zone has a lever yet: tick one above.</p>;
  return (
    <div className={styles.zonesFrame}>
      <table className={styles.zones}>
        <caption className="visually-hidden">Amounts by zone and variant</caption>
        <thead>
          <tr>
            <th scope="col">Zone</th>
            <th scope="col">Lever</th>
            {places.map((place) => (
              <th key={place} scope="col" className={styles.ownHead}>
                {values[nameField(place)]}
              </th>
            ))}
            <th scope="col">Unit</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ zoneId, lever }) => {
            const { label, unit } = LEVER_SCALES[lever];
            const isIdle = idle.has(`${zoneId}/${lever}`);
            return (
              <tr key={`${zoneId}/${lever}`} hidden={!isNow.has(`${zoneId}/${lever}`)}>
                <th scope="row">{codes.get(zoneId)}</th>
                <td>
                  {label}
                  {isIdle ? <span className={styles.soft}>, does nothing here</span> : null}
                </td>
                {places.map((place) => {
                  const name = ownAmountField(place, zoneId, lever);
                  return (
                    <td key={place} className={styles.own}>
                      <input
                        name={name}
                        id={name}
                        inputMode="decimal"
                        autoComplete="off"
                        className={styles.ownAmount}
                        aria-label={`${label}, zone ${codes.get(zoneId)}, ${values[nameField(place)]}`}
                        aria-invalid={errors[name] ? true : undefined}
                        aria-describedby={errors[name] ? `${name}-error` : undefined}
                        placeholder={values[amountField(place, lever)] ?? "0"}
                        defaultValue={begin[name]}
                      />
                      {errors[name] ? (
                        <span id={`${name}-error`} className={styles.error}>
                          {errors[name]}
                        </span>
                      ) : null}
                    </td>
                  );
                })}
                <td>{unit}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
