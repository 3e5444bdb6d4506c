import Link from "next/link";
import { REPORT_STATES, STATE_WORDS } from "@/lib/comfort-reports/report-state";
import type { InboxView } from "@/lib/services/comfort-reports/inbox";
import styles from "./view-choice.module.css";

type Props = { present: InboxView; href: (change: { view: InboxView }) => string };

/** Which reports the list shows. */
export function ViewChoice({ present, href }: Props) {
  const views: readonly { view: InboxView; label: string }[] = [
    { view: "open", label: "open" },
    ...REPORT_STATES.map((view) => ({ view, label: STATE_WORDS[view] })),
    { view: "all", label: "all" },
  ];
  return (
    <nav aria-label="Which reports" className={styles.views}>
      <ul>
        {views.map(({ view, label }) => (
          <li key={view}>
            <Link href={href({ view })} aria-current={view === present ? "true" : undefined}>
              {label}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
