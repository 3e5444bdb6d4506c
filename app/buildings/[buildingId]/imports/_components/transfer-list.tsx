"use client";

import { useEffect, useState } from "react";
import { Button } from "@/app/_components/ui/button";
import { isOpen, quarterOf, type Transfer } from "./transfer";
import styles from "./transfer-list.module.css";
import { megabytesText, rateOf, timeLeftText } from "./transfer-words";

type Props = {
  transfers: readonly Transfer[];
  onPause: (key: number) => void;
  onResume: (key: number) => void;
  onRemove: (key: number) => void;
};

/** The files on their way: how far each is, how fast, how long still; and what can be done about it. */
export function TransferList({ transfers, onPause, onResume, onRemove }: Props) {
  if (transfers.length === 0) return null;
  return (
    <>
      <ul className={styles.list} aria-label="Files on their way">
        {transfers.map((transfer) => {
          const { key, file, state, bytes } = transfer;
          const isMoving = state === "sending" || state === "resting";
          return (
            <li key={key} className={styles.row}>
              <div>
                <div className={styles.name}>{file.name}</div>
                <progress
                  className={styles.bar}
                  max={Math.max(1, file.size)}
                  value={bytes}
                  aria-label={`${file.name}, part sent`}
                />
                <div className={styles.figures}>{figuresOf(transfer)}</div>
              </div>
              {isOpen(transfer) ? (
                <div className={styles.buttons}>
                  {isMoving ? (
                    <Button aria-label={`Pause ${file.name}`} onClick={() => onPause(key)}>
                      Pause
                    </Button>
                  ) : null}
                  {state === "paused" ? (
                    <Button aria-label={`Go on with ${file.name}`} onClick={() => onResume(key)}>
                      Go on
                    </Button>
                  ) : null}
                  <Button aria-label={`Discard ${file.name}`} onClick={() => onRemove(key)}>
                    Discard
                  </Button>
                </div>
              ) : null}
            </li>
          );
        })}
      </ul>
      <Announcement transfers={transfers} />
    </>
  );
}

const STATE_WORDS: Record<Transfer["state"], string> = {
  waiting: "waits for its turn",
  sending: "being sent",
  resting: "",
  paused: "paused",
  done: "",
  refused: "refused:",
};

function figuresOf(transfer: Transfer): string {
  const { state, bytes, file, marks, message } = transfer;
  const rate = state === "sending" ? rateOf(marks) : null;
  const parts = [
    `${megabytesText(bytes)} of ${megabytesText(file.size)}`,
    rate === null ? "" : `${megabytesText(rate)} a second`,
    timeLeftText(file.size - bytes, rate),
    `${STATE_WORDS[state]} ${message}`.trim(),
  ];
  return parts.filter(Boolean).join(", ");
}

/** Says aloud, politely, what happens to a file and each quarter of the one being sent; not every tick. */
function Announcement({ transfers }: { transfers: readonly Transfer[] }) {
  const [said, setSaid] = useState("");
  const moving = transfers.find(({ state }) => state !== "waiting" && state !== "done") ?? transfers.at(-1);
  const quarter = moving ? quarterOf(moving) : 0;
  const text = moving ? sentenceOf(moving, quarter) : "";
  useEffect(() => setSaid(text), [text]);
  return (
    <p className="visually-hidden" role="status" aria-live="polite">
      {said}
    </p>
  );
}

function sentenceOf({ file, state, message }: Transfer, quarter: number): string {
  switch (state) {
    case "sending":
      return quarter === 0 ? `${file.name} is being sent.` : `${file.name}: ${quarter * 25} percent sent.`;
    case "resting":
      return `${file.name}: the line dropped; it goes on by itself.`;
    case "paused":
      return `${file.name} is paused.`;
    case "done":
      return `${file.name} is at the server.`;
    case "refused":
      return `${file.name} was refused: ${message}`;
    case "waiting":
      return `${file.name} waits for its turn.`;
  }
}
