import { Button } from "@/app/_components/ui/button";
import type { Unfinished } from "./transfer";
import styles from "./transfer-list.module.css";
import { megabytesText } from "./transfer-words";

/** Uploads that were begun and broke off: choosing the same file again goes on with them. */
export function UnfinishedUploads({
  uploads,
  onDiscard,
}: {
  uploads: readonly Unfinished[];
  onDiscard: (upload: Unfinished) => void;
}) {
  if (uploads.length === 0) return null;
  return (
    <div>
      <h3>Not finished</h3>
      <p>Choose the same file again to go on with it. What has come is kept for seven days.</p>
      <ul className={styles.list}>
        {uploads.map((each) => (
          <li key={each.id} className={styles.row}>
            <div>
              <div className={styles.name}>{each.fileName}</div>
              <div className={styles.figures}>
                {megabytesText(each.receivedBytes)} of {megabytesText(each.totalBytes)}, begun by {each.startedBy}
              </div>
            </div>
            <div className={styles.buttons}>
              <Button aria-label={`Discard ${each.fileName}, not finished`} onClick={() => onDiscard(each)}>
                Discard
              </Button>
            </div>
          </li>
        ))}
      </ul>
    </div>
  );
}
