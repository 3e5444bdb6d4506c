import type { ReactNode } from "react";
import { MAPPING_BASES } from "@/lib/electrical/circuit/circuit-kinds";
import type { WalkView } from "@/lib/services/walks/read";
import styles from "./walk.module.css";
import type { WalkMemory } from "./walk-memory";

type Props = {
  memory: WalkMemory;
  circuits: WalkView["circuits"];
  meterKind: WalkMemory["meterKind"];
  onMeterKind: (kind: WalkMemory["meterKind"]) => void;
  /** Settings that are read seldom. */
  children: ReactNode;
};

/** Meter and circuit, as they were last, and what is entered seldom: folded away, in the form all the same. */
export function FoundMeans({ memory, circuits, meterKind, onMeterKind, children }: Props) {
  const circuit = circuits.find((each) => each.id === memory.circuitId)?.name ?? "circuit not known";
  const meter = meterKind === "clamp" ? "clamp meter" : "plug-in meter";
  return (
    <details className={styles.list}>
      <summary>
        {memory.meterName ? `${memory.meterName}, ` : ""}
        {meter}; {circuit}
      </summary>
      <div className={styles.means}>
        <label>
          Read with
          <select name="meterKind" value={meterKind} onChange={(event) => onMeterKind(event.target.value as "clamp")}>
            <option value="plug-meter">plug-in meter, W</option>
            <option value="clamp">clamp meter, A</option>
          </select>
        </label>
        <label>
          Meter
          <input name="meterName" autoComplete="off" defaultValue={memory.meterName} />
        </label>
        {meterKind === "clamp" ? (
          <label>
            Last digit, A
            <input
              name="meterResolutionA"
              inputMode="decimal"
              autoComplete="off"
              defaultValue={memory.meterResolutionA}
            />
          </label>
        ) : null}
        <label>
          Circuit
          <select name="circuitId" defaultValue={memory.circuitId ?? ""}>
            <option value="">not known</option>
            {circuits.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <label>
          Circuit known by
          <select name="circuitMapping" defaultValue={memory.circuitMapping}>
            {MAPPING_BASES.map((basis) => (
              <option key={basis} value={basis}>
                {basis.replaceAll("-", " ")}
              </option>
            ))}
          </select>
        </label>
        {children}
        <label>
          Nameplate, W
          <input name="nameplateW" inputMode="decimal" autoComplete="off" />
        </label>
        <label>
          Note
          <input name="note" autoComplete="off" />
        </label>
      </div>
    </details>
  );
}
