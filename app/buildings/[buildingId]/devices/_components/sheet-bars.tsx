import { type SettingBar, SettingsComparison } from "@/app/_components/charts/settings-comparison";
import { settingLabel } from "@/lib/electrical/device-kind";
import type { DeviceSheet } from "@/lib/electrical/device-sheet";
import { costWords, type SheetCircuit } from "../view-model";
import styles from "./device-form.module.css";

type Props = { sheet: DeviceSheet; currency: string; circuit: SheetCircuit | null };

/** The settings side by side as bars: power, energy with its cost, and current against the breaker's rating. */
export function SheetBars({ sheet, currency, circuit }: Props) {
  const powers: SettingBar[] = [];
  const energies: SettingBar[] = [];
  const currents: SettingBar[] = [];
  for (const line of sheet.lines) {
    if (line.power.status === "refused") continue;
    const { value, low, high } = line.power.powerW;
    const note = line.power.isUpperBound ? "at most" : undefined;
    const bar = { key: line.name, label: settingLabel(line.name), note };
    powers.push({ ...bar, value, low, high });
    if (line.energyKwh) energies.push({ ...bar, ...line.energyKwh, after: costWords(line, currency) });
    if (line.currentA !== null) currents.push({ ...bar, note: undefined, value: line.currentA });
  }
  return (
    <div className={styles.bars}>
      <figure>
        <figcaption>Power by setting</figcaption>
        <SettingsComparison label="Power by setting" unit="W" settings={powers} />
      </figure>
      <figure>
        <figcaption>Energy and cost a year by setting</figcaption>
        <SettingsComparison label="Energy and cost a year by setting" unit="kWh" settings={energies} />
      </figure>
      {circuit && circuit.breakerRatingA !== null ? (
        <figure>
          <figcaption>{`Current by setting, of the ${circuit.breakerRatingA} A of ${circuit.name}`}</figcaption>
          <SettingsComparison
            label="Current by setting"
            unit="A"
            decimals={1}
            settings={currents}
            end={circuit.breakerRatingA}
          />
        </figure>
      ) : null}
    </div>
  );
}
