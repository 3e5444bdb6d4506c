import { type FormEvent, useState } from "react";
import { classSetting, type DeviceClass } from "@/lib/electrical/device-classes";
import { settingLabel } from "@/lib/electrical/device-kind";
import type { WalkView } from "@/lib/services/walks/read";
import { type LocalEntry, labelAfter, readingOrder } from "../view-model";
import { FoundMeans } from "./found-means";
import { readingOf, type SheetValues } from "./sheet-values";
import styles from "./walk.module.css";
import type { WalkMemory } from "./walk-memory";

type Found = NonNullable<LocalEntry["device"]>;

type Props = {
  deskCode: string;
  deviceClass: DeviceClass;
  circuits: WalkView["circuits"];
  memory: WalkMemory;
  taken: ReadonlySet<string>;
  onBack: () => void;
  onSave: (device: Found, change: Partial<WalkMemory>, oneMore: boolean) => Promise<void>;
};

/** The readings of a device that was found. Label, meter and circuit stand as they were last; the first reading has the focus. */
export function FoundSheet({ deskCode, deviceClass, circuits, memory, taken, onBack, onSave }: Props) {
  const { first, later } = readingOrder(deviceClass);
  const [fault, setFault] = useState<{ field: string; message: string } | null>(null);
  const [meterKind, setMeterKind] = useState(memory.meterKind);
  const unit = meterKind === "clamp" ? "A" : "W";

  const save = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget, (event.nativeEvent as SubmitEvent).submitter);
    const values = Object.fromEntries([...form].map(([name, value]) => [name, String(value).trim()])) as SheetValues;
    const label = values.label ?? "";
    if (label === "") return setFault({ field: "label", message: "Give the number of its sticker." });
    if (taken.has(label))
      return setFault({ field: "label", message: `${label} is on the register already: give this one another label.` });
    const readings: Found["readings"] = [];
    for (const setting of [...first, ...later]) {
      const reading = readingOf(values[`reading.${setting}`] ?? "", unit);
      if ("fault" in reading) return setFault({ field: `reading.${setting}`, message: reading.fault });
      if (reading.value !== null) readings.push({ setting, value: reading.value });
    }
    const nameplate = readingOf(values.nameplateW ?? "", "W");
    if ("fault" in nameplate) return setFault({ field: "nameplateW", message: `Nameplate: ${nameplate.fault}` });
    setFault(null);
    const circuitId = values.circuitId ? Number(values.circuitId) : null;
    const means = {
      meterKind,
      meterName: values.meterName ?? "",
      circuitId,
      circuitMapping: (values.circuitMapping || "assumed") as WalkMemory["circuitMapping"],
    };
    const meterResolutionA = values.meterResolutionA ?? "";
    const recentClasses = [deviceClass.id, ...memory.recentClasses.filter((id) => id !== deviceClass.id)].slice(0, 6);
    await onSave(
      {
        ...means,
        label,
        deviceClass: deviceClass.id,
        readings,
        note: values.note ?? "",
        nameplateW: nameplate.value,
        meterResolutionA: meterKind === "clamp" && Number(meterResolutionA) > 0 ? Number(meterResolutionA) : null,
      },
      { ...means, meterResolutionA, lastLabel: label, recentClasses },
      values.after === "same",
    );
  };

  const field = (setting: string, autoFocus: boolean) => {
    const usual = classSetting(deviceClass, setting);
    const name = `reading.${setting}`;
    return (
      <div key={setting} className={styles.reading}>
        <label htmlFor={name}>{settingLabel(setting)}</label>
        <span className={styles.entry}>
          <input
            id={name}
            name={name}
            inputMode="decimal"
            autoComplete="off"
            enterKeyHint="next"
            // The one field that the eye goes to; the keys of the phone open with it.
            // biome-ignore lint/a11y/noAutofocus: the screen was just opened for this entry
            autoFocus={autoFocus}
            placeholder={unit === "W" && usual ? `usually ${usual.powerW}` : ""}
            aria-invalid={fault?.field === name || undefined}
            aria-describedby={fault?.field === name ? "sheet-fault" : undefined}
            onKeyDown={nextOnEnter}
          />
          <span>{unit}</span>
        </span>
      </div>
    );
  };

  return (
    <form onSubmit={(event) => void save(event)} noValidate aria-labelledby="walk-sheet">
      <h2 id="walk-sheet" className={styles.sheetTitle}>
        {deviceClass.label} <span className={styles.soft}>desk {deskCode}</span>
      </h2>
      {fault ? (
        <p id="sheet-fault" role="alert" className={styles.fault}>
          {fault.message}
        </p>
      ) : null}
      {first.map((setting, at) => field(setting, at === 0))}
      <div className={styles.reading}>
        <label htmlFor="label">Label</label>
        <span className={styles.entry}>
          <input
            id="label"
            name="label"
            autoComplete="off"
            defaultValue={labelAfter(memory.lastLabel, taken)}
            aria-invalid={fault?.field === "label" || undefined}
          />
        </span>
      </div>
      <FoundMeans memory={memory} circuits={circuits} meterKind={meterKind} onMeterKind={setMeterKind}>
        {later.map((setting) => field(setting, false))}
      </FoundMeans>
      <div className={styles.bar}>
        <button type="submit" name="after" value="next" className={styles.primary}>
          Save, next desk
        </button>
        <button type="submit" name="after" value="same" className={styles.plain}>
          Save, one more here
        </button>
        <button type="button" className={styles.quiet} onClick={onBack}>
          Back
        </button>
      </div>
    </form>
  );
}

/** The key of the keypad that says "next" goes to the next reading; after the last one it saves. */
function nextOnEnter(event: React.KeyboardEvent<HTMLInputElement>): void {
  if (event.key !== "Enter") return;
  const all = event.currentTarget.form?.querySelectorAll<HTMLInputElement>('input[name^="reading."]') ?? [];
  const shown = [...all].filter((each) => each.offsetParent !== null);
  const next = shown[shown.indexOf(event.currentTarget) + 1];
  if (!next) return;
  event.preventDefault();
  next.focus();
}
