"use client";

import { type ReactNode, useEffect, useMemo, useState } from "react";
import type { DeviceClass } from "@/lib/electrical/device-classes";
import type { WalkView } from "@/lib/services/walks/read";
import { type LocalEntry, lastLabel, nextDesk, progressWords } from "../view-model";
import { DeskScreen } from "./desk-screen";
import { newClientId } from "./entry-store";
import { FloorChoice } from "./floor-choice";
import { SendState } from "./send-state";
import { useKeptPage } from "./use-kept-page";
import { useWalkQueue } from "./use-walk-queue";
import styles from "./walk.module.css";
import { readMemory, type WalkMemory, writeMemory } from "./walk-memory";

type Props = {
  buildingId: number;
  walkId: number;
  view: Pick<WalkView, "desks" | "circuits" | "labels">;
  classes: readonly DeviceClass[];
  mainsVoltageV: number;
  /** Stands below: cautions, and the end of the walk. */
  children: ReactNode;
};

/** The walk on a phone: floors, then desk after desk. What is entered is on the phone before anything else happens. */
export function WalkScreen({ buildingId, walkId, view, classes, mainsVoltageV, children }: Props) {
  const path = `/buildings/${buildingId}/walk`;
  const { desks } = view;
  const known = useMemo(() => new Set(desks.flatMap((desk) => desk.entries.map((entry) => entry.clientId))), [desks]);
  const queue = useWalkQueue(buildingId, `${path}/entries`, known);
  const kept = useKeptPage(path);
  const [memory, setMemory] = useState<WalkMemory | null>(null);
  const [failure, setFailure] = useState("");
  const made = queue.entries.filter((entry) => entry.walkId === walkId);

  useEffect(() => {
    const remembered = readMemory(buildingId);
    const asked = new URLSearchParams(location.search).get("desk");
    const desk = asked === null ? undefined : desks.find((each) => each.code === asked);
    setMemory(desk ? { ...remembered, floor: desk.floor, deskCode: desk.code } : remembered);
    // A reload goes on where the walk stands, not at the desk of the label that began it.
    if (asked !== null) history.replaceState(null, "", path);
  }, [buildingId, desks, path]);

  if (!memory || !queue.isRead)
    return <p role="status">{queue.link === "no-store" ? NO_STORE : "Reading what this phone has kept."}</p>;

  const remember = (change: Partial<WalkMemory>): void => {
    const next = { ...memory, ...change };
    setMemory(next);
    writeMemory(buildingId, next);
  };
  const enter = async (
    entry: Pick<LocalEntry, "deskCode" | "kind" | "deviceId" | "device">,
    change: Partial<WalkMemory> = {},
    stay = false,
  ) => {
    const desk = desks.find((each) => each.code === entry.deskCode);
    const own = made.filter((each) => each.deskCode === entry.deskCode).map((each) => each.clientId);
    const whole: LocalEntry = {
      ...entry,
      clientId: newClientId(),
      walkId,
      buildingId,
      madeAtMs: Date.now(),
      known: [...(desk?.entries.map((each) => each.clientId) ?? []), ...own],
      state: "unsent",
      message: "",
      unknown: [],
      field: null,
    };
    try {
      await queue.keep(whole);
      setFailure("");
      const next = stay
        ? entry.deskCode
        : (nextDesk(desks, [...made, whole], memory.floor ?? "", entry.deskCode)?.code ?? null);
      remember({ ...change, deskCode: next });
    } catch {
      setFailure(
        "This phone could not keep the entry: free some room on it, then enter it again. Nothing was lost that was kept before.",
      );
    }
  };

  const { floor, deskCode } = memory;
  const desk = floor === null || deskCode === null ? undefined : desks.find((each) => each.code === deskCode);
  const taken = new Set([...view.labels, ...made.flatMap((entry) => (entry.device ? [entry.device.label] : []))]);
  return (
    <div className={styles.walk}>
      <p className={styles.progress}>
        <strong>{progressWords(desks, made)}</strong>
        {floor !== null ? (
          <button type="button" className={styles.quiet} onClick={() => remember({ floor: null, deskCode: null })}>
            Floors
          </button>
        ) : null}
      </p>
      {failure ? <p role="alert">{failure}</p> : null}
      {floor === null ? (
        <FloorChoice
          desks={desks}
          made={made}
          onChoose={(chosen) =>
            remember({ floor: chosen, deskCode: nextDesk(desks, made, chosen, null)?.code ?? null })
          }
        />
      ) : (
        <DeskScreen
          key={desk?.code ?? "none"}
          desk={desk ?? null}
          floor={floor}
          desks={desks}
          made={made}
          classes={classes}
          mainsVoltageV={mainsVoltageV}
          circuits={view.circuits}
          memory={{ ...memory, lastLabel: memory.lastLabel || lastLabel(view.labels) }}
          taken={taken}
          onEnter={enter}
          onGo={(code) => remember({ deskCode: code })}
        />
      )}
      <SendState queue={queue} desks={desks} kept={kept} />
      {children}
    </div>
  );
}

const NO_STORE =
  "This browser keeps nothing for this page (a private window, or storage is full), so a walk could lose entries. Use a plain window, or register devices on the Devices page.";
