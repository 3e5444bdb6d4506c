import { useCallback, useEffect, useRef, useState } from "react";
import type { EntryOutcome } from "@/lib/services/walks/entry-input";
import type { LocalEntry } from "../view-model";
import { type EntryStore, openEntryStore } from "./entry-store";

/** Whether what is unsent can go: asked at every try, since a phone that says "online" often is not. */
export type Link = "unknown" | "there" | "offline" | "signed-out" | "no-store";

const RETRY_MS = 10_000;
const BATCH = 20;

export type WalkQueue = {
  entries: readonly LocalEntry[];
  /** False until the entries of this phone have been read. */
  isRead: boolean;
  link: Link;
  keep(entry: LocalEntry): Promise<void>;
  drop(clientId: string): Promise<void>;
  send(): Promise<void>;
};

/**
 * Entries of this phone: kept in its database first, sent when there is a network, again and again until the server has
 * said what became of each. Those that the server has (`known`) are forgotten here.
 */
export function useWalkQueue(buildingId: number, address: string, known: ReadonlySet<string>): WalkQueue {
  const store = useRef<EntryStore | null>(null);
  const isSending = useRef(false);
  const [entries, setEntries] = useState<readonly LocalEntry[]>([]);
  const [isRead, setRead] = useState(false);
  const [link, setLink] = useState<Link>("unknown");

  const refresh = useCallback(async () => {
    if (store.current) setEntries(await store.current.list(buildingId));
  }, [buildingId]);

  const send = useCallback(async () => {
    if (!store.current || isSending.current) return;
    isSending.current = true;
    try {
      for (;;) {
        const unsent = (await store.current.list(buildingId)).filter((entry) => entry.state === "unsent");
        if (unsent.length === 0) break;
        const answer = await post(address, unsent.slice(0, BATCH));
        setLink(answer.link);
        if (!answer.outcomes || !(await settle(store.current, unsent, answer.outcomes))) break;
      }
    } finally {
      isSending.current = false;
      await refresh();
    }
  }, [address, buildingId, refresh]);

  useEffect(() => {
    let isGone = false;
    const begin = async () => {
      const opened = await openEntryStore();
      if (isGone) return;
      store.current = opened;
      for (const entry of await opened.list(buildingId))
        if (entry.state === "sent" && known.has(entry.clientId)) await opened.drop(entry.clientId);
      await refresh();
      setRead(true);
      await send();
    };
    begin().catch((error) => {
      console.warn(error);
      setLink("no-store");
    });
    const again = () => void send();
    const timer = setInterval(again, RETRY_MS);
    window.addEventListener("online", again);
    document.addEventListener("visibilitychange", again);
    return () => {
      isGone = true;
      clearInterval(timer);
      window.removeEventListener("online", again);
      document.removeEventListener("visibilitychange", again);
    };
  }, [buildingId, known, refresh, send]);

  const keep = useCallback(
    async (entry: LocalEntry) => {
      if (!store.current) throw new Error("this phone keeps no entries");
      await store.current.keep(entry);
      await refresh();
      void send();
    },
    [refresh, send],
  );
  const drop = useCallback(
    async (clientId: string) => {
      await store.current?.drop(clientId);
      await refresh();
    },
    [refresh],
  );
  return { entries, isRead, link, keep, drop, send };
}

async function post(
  address: string,
  entries: readonly LocalEntry[],
): Promise<{ link: Link; outcomes?: EntryOutcome[] }> {
  try {
    const sent = entries.map(({ state: _, message: _m, unknown: _u, field: _f, buildingId: _b, ...entry }) => entry);
    const answer = await fetch(address, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify({ entries: sent }),
    });
    if (answer.status === 401) return { link: "signed-out" };
    if (!answer.ok) return { link: "offline" };
    return { link: "there", outcomes: (await answer.json()).outcomes };
  } catch {
    return { link: "offline" };
  }
}

/** Writes down what became of each entry that was sent as it still stands; true when any was settled. */
async function settle(
  store: EntryStore,
  sent: readonly LocalEntry[],
  outcomes: readonly EntryOutcome[],
): Promise<boolean> {
  let settled = 0;
  for (const { clientId, state, message, unknown, field } of outcomes) {
    const entry = sent.find((each) => each.clientId === clientId);
    if (!entry) continue;
    const now = state === "stored" || state === "repeat" ? "sent" : state;
    await store.keep({ ...entry, state: now, message, unknown, field });
    settled += 1;
  }
  return settled > 0;
}
