import type { DeviceClass } from "@/lib/electrical/device-classes";
import { ClassPicture } from "./class-picture";
import styles from "./walk.module.css";

type Props = { classes: readonly DeviceClass[]; onChoose: (deviceClass: DeviceClass) => void; onBack: () => void };

/** What it is, by its picture; what was met last stands first. */
export function ClassChoice({ classes, onChoose, onBack }: Props) {
  return (
    <section aria-labelledby="walk-class">
      <h2 id="walk-class">What is it?</h2>
      <ul className={styles.classes}>
        {classes.map((deviceClass) => (
          <li key={deviceClass.id}>
            <button type="button" className={styles.classButton} onClick={() => onChoose(deviceClass)}>
              <ClassPicture id={deviceClass.id} />
              <span>{deviceClass.label}</span>
            </button>
          </li>
        ))}
      </ul>
      <div className={styles.bar}>
        <button type="button" className={styles.plain} onClick={onBack}>
          Back to the desk
        </button>
      </div>
    </section>
  );
}
