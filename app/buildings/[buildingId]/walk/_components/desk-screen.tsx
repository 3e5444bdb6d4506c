import { useState } from "react";
import type { DeviceClass } from "@/lib/electrical/device-classes";
import type { WalkDesk, WalkView } from "@/lib/services/walks/read";
import { classesInOrder, floorName, isSeen, type LocalEntry, nextDesk } from "../view-model";
import { ClassChoice } from "./class-choice";
import { DeskList } from "./desk-list";
import { FoundSheet } from "./found-sheet";
import styles from "./walk.module.css";
import type { WalkMemory } from "./walk-memory";

type Enter = (
  entry: Pick<LocalEntry, "deskCode" | "kind" | "deviceId" | "device">,
  change?: Partial<WalkMemory>,
  stay?: boolean,
) => Promise<void>;

type Props = {
  desk: WalkDesk | null;
  floor: string;
  desks: readonly WalkDesk[];
  made: readonly LocalEntry[];
  classes: readonly DeviceClass[];
  mainsVoltageV: number;
  circuits: WalkView["circuits"];
  memory: WalkMemory;
  taken: ReadonlySet<string>;
  onEnter: Enter;
  onGo: (deskCode: string) => void;
};

type Step = { at: "desk" } | { at: "class" } | { at: "sheet"; deviceClass: DeviceClass };

/** One desk: what the register has there, one tap for nothing, and the way to a device that was found. */
export function DeskScreen({
  desk,
  floor,
  desks,
  made,
  classes,
  mainsVoltageV,
  circuits,
  memory,
  taken,
  onEnter,
  onGo,
}: Props) {
  const [step, setStep] = useState<Step>({ at: "desk" });
  const list = (
    <DeskList desks={desks.filter((each) => each.floor === floor)} made={made} current={desk?.code} onGo={onGo} />
  );
  if (!desk)
    return (
      <>
        <p className={styles.done}>Every desk of {floorName(floor).toLowerCase()} has been seen.</p>
        {list}
      </>
    );
  if (step.at === "class")
    return (
      <ClassChoice
        classes={classesInOrder(classes, memory.recentClasses, mainsVoltageV)}
        onChoose={(deviceClass) => setStep({ at: "sheet", deviceClass })}
        onBack={() => setStep({ at: "desk" })}
      />
    );
  if (step.at === "sheet")
    return (
      <FoundSheet
        deskCode={desk.code}
        deviceClass={step.deviceClass}
        circuits={circuits}
        memory={memory}
        taken={taken}
        onBack={() => setStep({ at: "class" })}
        onSave={async (device, change, oneMore) => {
          await onEnter({ deskCode: desk.code, kind: "device", deviceId: null, device }, change, oneMore);
          if (oneMore) setStep({ at: "desk" });
        }}
      />
    );
  const own = made.filter((entry) => entry.deskCode === desk.code);
  const said = new Set(own.map((entry) => entry.deviceId));
  const open = desk.devices.filter((device) => !said.has(device.id));
  const isLast = open.length <= 1;
  const next = nextDesk(desks, made, floor, desk.code);
  return (
    <section aria-labelledby="walk-desk">
      <h2 id="walk-desk" className={styles.deskCode}>
        Desk {desk.code}
      </h2>
      <p className={styles.place}>
        Zone {desk.zoneCode}
        {desk.note ? `, ${desk.note}` : ""}
        {isSeen(desk, made) ? ". Seen already on this walk." : ""}
      </p>
      {own.map((entry) => (entry.device ? <p key={entry.clientId}>Entered here: {entry.device.label}</p> : null))}
      {open.map((device) => (
        <div key={device.id} className={styles.known}>
          <span>
            {device.label}
            <span className={styles.soft}> {classes.find((each) => each.id === device.deviceClass)?.label}</span>
          </span>
          <button
            type="button"
            className={styles.small}
            onClick={() =>
              void onEnter({ deskCode: desk.code, kind: "seen", deviceId: device.id, device: null }, {}, !isLast)
            }
          >
            Still here
          </button>
          <button
            type="button"
            className={styles.small}
            onClick={() =>
              void onEnter({ deskCode: desk.code, kind: "missing", deviceId: device.id, device: null }, {}, !isLast)
            }
          >
            Not here
          </button>
        </div>
      ))}
      {list}
      <div className={styles.bar}>
        <button type="button" className={styles.primary} onClick={() => setStep({ at: "class" })}>
          Heater or fan found
        </button>
        {desk.devices.length === 0 && !own.some((entry) => entry.kind === "device") ? (
          <button
            type="button"
            className={styles.plain}
            onClick={() => void onEnter({ deskCode: desk.code, kind: "nothing", deviceId: null, device: null })}
          >
            Nothing here
          </button>
        ) : null}
        {next && isSeen(desk, made) ? (
          <button type="button" className={styles.plain} onClick={() => onGo(next.code)}>
            Next desk
          </button>
        ) : null}
      </div>
    </section>
  );
}
