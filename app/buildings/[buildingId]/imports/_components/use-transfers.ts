"use client";

import { useCallback, useEffect, useRef, useState } from "react";
import type { FileOutcome } from "@/lib/services/imports/take-file";
import { sendPart } from "./part-transport";
import { Refused, sendInParts } from "./send-in-parts";
import { isOpen, isSameFile, type Transfer, type Unfinished } from "./transfer";
import { withMark } from "./transfer-words";

/**
 * The files on their way to the server: one is sent at a time, the others wait. `base` is where uploads are begun.
 * When all are through, `onSettled` is given what became of them.
 */
export function useTransfers(base: string, onSettled: (outcomes: FileOutcome[]) => void) {
  const [transfers, setTransfers] = useState<readonly Transfer[]>([]);
  const [unfinished, setUnfinished] = useState<readonly Unfinished[]>([]);
  const list = useRef<readonly Transfer[]>([]);
  const current = useRef<{ key: number; stop: AbortController } | null>(null);
  const nextKey = useRef(1);

  const change = useCallback((key: number, values: Partial<Transfer>) => {
    list.current = list.current.map((each) => (each.key === key ? { ...each, ...values } : each));
    setTransfers(list.current);
  }, []);

  const loadUnfinished = useCallback(async (): Promise<readonly Unfinished[]> => {
    const answer = await fetch(base, { headers: { accept: "application/json" } }).catch(() => null);
    const found: readonly Unfinished[] = answer?.ok ? await answer.json() : [];
    if (answer?.ok) setUnfinished(found);
    return found;
  }, [base]);

  useEffect(() => {
    void loadUnfinished();
    return () => current.current?.stop.abort();
  }, [loadUnfinished]);

  const send = useCallback(
    async (transfer: Transfer, stop: AbortController) => {
      const { key, file } = transfer;
      const now = (values: Partial<Transfer>) => {
        if (current.current?.stop === stop) change(key, values);
      };
      now({ state: "sending", message: "", marks: [] });
      try {
        const outcome = await sendInParts({
          file,
          base,
          known: transfer.address,
          transport: sendPart,
          signal: stop.signal,
          onProgress: (bytes) => {
            const marks = list.current.find((each) => each.key === key)?.marks ?? [];
            now({ bytes, marks: withMark(marks, { atMs: performance.now(), bytes }) });
          },
          onAddress: (address) => now({ address }),
          onRest: (ms) =>
            now(
              ms === 0
                ? { state: "sending", message: "" }
                : {
                    state: "resting",
                    message: `The line dropped. Tried again in ${Math.round(ms / 1000)}\u00a0s.`,
                    marks: [],
                  },
            ),
          rest,
        });
        now({ state: "done", bytes: file.size, outcome, message: outcome.message });
      } catch (error) {
        if (stop.signal.aborted) return;
        const message = error instanceof Refused ? error.message : "Something went wrong. Choose the file again.";
        now({ state: "refused", message, outcome: { fileName: file.name, state: "refused", message, runId: null } });
      }
    },
    [base, change],
  );

  const goOn = useCallback(async () => {
    if (current.current) return;
    for (;;) {
      const next = list.current.find(({ state }) => state === "waiting");
      if (!next) break;
      const stop = new AbortController();
      current.current = { key: next.key, stop };
      await send(next, stop);
      current.current = null;
    }
    if (list.current.length > 0 && !list.current.some(isOpen))
      onSettled(list.current.flatMap(({ outcome }) => outcome ?? []));
  }, [send, onSettled]);

  /** Stops the file that is being sent; what came of it stays at the server. */
  const halt = useCallback((key: number) => {
    if (current.current?.key === key) current.current.stop.abort();
  }, []);

  const start = (files: readonly File[]) => {
    const taken = new Set(list.current.filter(isOpen).map(({ address }) => address));
    const added = files.map((file): Transfer => {
      const begun = unfinished.find((each) => isSameFile(file, each) && !taken.has(`${base}/${each.id}`));
      const address = begun ? `${base}/${begun.id}` : null;
      if (address) taken.add(address);
      return {
        key: nextKey.current++,
        file,
        state: "waiting",
        bytes: begun?.receivedBytes ?? 0,
        marks: [],
        address,
        message: "",
        outcome: null,
      };
    });
    list.current = [...list.current.filter(isOpen), ...added];
    setTransfers(list.current);
    void goOn();
  };
  const pause = (key: number) => {
    halt(key);
    change(key, { state: "paused", message: "", marks: [] });
  };
  const resume = (key: number) => {
    change(key, { state: "waiting", message: "" });
    void goOn();
  };
  /** Also when the page is left at once. */
  const discardAt = async (address: string) => {
    await fetch(address, { method: "DELETE", keepalive: true }).catch(() => null);
    await loadUnfinished();
  };
  /** Discards what came of a file whose upload may have been begun without our hearing of it. */
  const discardUnheard = async (file: File) => {
    const taken = new Set(list.current.map(({ address }) => address));
    for (const each of await loadUnfinished())
      if (isSameFile(file, each) && !taken.has(`${base}/${each.id}`)) await discardAt(`${base}/${each.id}`);
  };
  const remove = (key: number) => {
    const removed = list.current.find((each) => each.key === key);
    halt(key);
    list.current = list.current.filter((each) => each.key !== key);
    setTransfers(list.current);
    if (removed?.address) void discardAt(removed.address);
    else if (removed && removed.state !== "waiting") void discardUnheard(removed.file);
    void goOn();
  };
  const open = new Set(transfers.map(({ address }) => address));
  return {
    transfers,
    unfinished: unfinished.filter((each) => !open.has(`${base}/${each.id}`)),
    start,
    pause,
    resume,
    remove,
    discard: (each: Unfinished) => discardAt(`${base}/${each.id}`),
  };
}

/** Waits, or throws as soon as it is told to stop. */
function rest(ms: number, signal: AbortSignal): Promise<void> {
  return new Promise((resolve, reject) => {
    if (signal.aborted) reject(signal.reason);
    const timer = setTimeout(resolve, ms);
    signal.addEventListener(
      "abort",
      () => {
        clearTimeout(timer);
        reject(signal.reason);
      },
      { once: true },
    );
  });
}
