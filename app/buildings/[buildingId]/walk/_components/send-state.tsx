import type { WalkDesk } from "@/lib/services/walks/read";
import { entryWords, type LocalEntry } from "../view-model";
import type { KeptPage } from "./use-kept-page";
import type { WalkQueue } from "./use-walk-queue";
import styles from "./walk.module.css";

type Props = { queue: WalkQueue; desks: readonly WalkDesk[]; kept: KeptPage };

/** What is not yet with the server, and what needs a decision. Nothing leaves this list by itself before it is stored. */
export function SendState({ queue, desks, kept }: Props) {
  const unsent = queue.entries.filter((entry) => entry.state === "unsent");
  const open = queue.entries.filter((entry) => entry.state === "conflict" || entry.state === "refused");
  return (
    <aside className={styles.sendState} aria-label="What is sent">
      <p role="status">{sentence(unsent.length, open.length, queue.link)}</p>
      {unsent.length > 0 ? (
        <>
          <details className={styles.list}>
            <summary>Unsent entries</summary>
            <ul>
              {unsent.map((entry) => (
                <li key={entry.clientId}>{entryWords(entry, desks)}</li>
              ))}
            </ul>
          </details>
          <button type="button" className={styles.quiet} onClick={() => void queue.send()}>
            Send now
          </button>
        </>
      ) : null}
      {open.map((entry) => (
        <OpenEntry key={entry.clientId} entry={entry} desks={desks} queue={queue} />
      ))}
      <p className={styles.soft}>{KEPT[kept]}</p>
    </aside>
  );
}

const KEPT: Record<KeptPage, string> = {
  asking: "",
  kept: "This page opens without network.",
  cannot:
    "Entries are kept on this phone, but this page needs a network to open again (its address is not https, or the browser forbids it).",
};

function sentence(unsent: number, open: number, link: WalkQueue["link"]): string {
  const decision = open === 0 ? "" : `${open === 1 ? "1 entry needs" : `${open} entries need`} a decision`;
  if (unsent === 0) return decision ? `${decision}; all else is sent.` : "Everything is sent.";
  const wait =
    unsent === 1 ? "1 entry is unsent and kept on this phone" : `${unsent} entries are unsent and kept on this phone`;
  const why = link === "signed-out" ? ": sign in again to send" : link === "offline" ? ": no network" : "";
  return `${wait}${why}.${decision ? ` ${decision}.` : ""}`;
}

/** An entry that the server did not take: both sides are shown, and a person decides. */
function OpenEntry({ entry, desks, queue }: { entry: LocalEntry; desks: readonly WalkDesk[]; queue: WalkQueue }) {
  const again = (change: Partial<LocalEntry>) =>
    void queue.keep({ ...entry, ...change, state: "unsent", message: "", unknown: [], field: null });
  const { device } = entry;
  return (
    <section className={styles.open} aria-label={`Decide on ${entry.deskCode}`}>
      <p>
        <strong>{entryWords(entry, desks)}</strong>
      </p>
      <p>{entry.message}</p>
      {entry.field === "label" && device ? (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            const label = String(new FormData(event.currentTarget).get("label") ?? "").trim();
            if (label) again({ device: { ...device, label } });
          }}
        >
          <label>
            Another label <input name="label" autoComplete="off" defaultValue={device.label} />
          </label>
          <button type="submit" className={styles.small}>
            Send with this label
          </button>
        </form>
      ) : (
        <button
          type="button"
          className={styles.small}
          onClick={() => again({ known: [...(entry.known ?? []), ...entry.unknown] })}
        >
          {entry.state === "conflict" ? "Keep mine beside it" : "Send again"}
        </button>
      )}
      <button type="button" className={styles.small} onClick={() => void queue.drop(entry.clientId)}>
        Drop mine
      </button>
    </section>
  );
}
