import { memo } from "react";
import { LEVER_SCALES, LEVERS } from "@/lib/proposals/lever";
import { VERDICT_WORDS } from "@/lib/trends/diagnosis/verdict-words";
import { zoneField } from "../form";
import type { ZoneChoice } from "../view-model";
import styles from "./proposal.module.css";

type Props = {
  zones: readonly ZoneChoice[];
  begin: Readonly<Record<string, string>>;
  idle: ReadonlyMap<string, string>;
};

/** Zones against levers: a box where a lever is used. What does nothing in a zone is said in its row. */
export const ZoneLevers = memo(function ZoneLevers({ zones, begin, idle }: Props) {
  return (
    <div className={styles.zonesFrame}>
      <table className={styles.zones}>
        <caption className="visually-hidden">Levers by zone</caption>
        <thead>
          <tr>
            <th scope="col">Zone</th>
            <th scope="col">Diagnosis</th>
            {LEVERS.map((lever) => (
              <th key={lever} scope="col">
                {LEVER_SCALES[lever].label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {zones.map((zone) => {
            const chosen = (begin[zoneField(zone.zoneId)] ?? "").split(",");
            const remarks = LEVERS.flatMap((lever) => {
              const reason = idle.get(`${zone.zoneId}/${lever}`);
              return reason ? [`${LEVER_SCALES[lever].label} does nothing: ${reason}.`] : [];
            });
            return (
              <tr key={zone.zoneId}>
                <th scope="row">{zone.code}</th>
                <td>
                  {VERDICT_WORDS[zone.verdict as keyof typeof VERDICT_WORDS] ?? zone.verdict}
                  {remarks.map((each) => (
                    <span key={each} className={styles.idle}>
                      {each}
                    </span>
                  ))}
                </td>
                {LEVERS.map((lever) => (
                  <td key={lever} className={styles.box}>
                    <label>
                      <span className="visually-hidden">
                        {LEVER_SCALES[lever].label}, zone {zone.code}
                      </span>
                      <input
                        type="checkbox"
                        name={zoneField(zone.zoneId)}
                        value={lever}
                        defaultChecked={chosen.includes(lever)}
                      />
                    </label>
                  </td>
                ))}
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
});
