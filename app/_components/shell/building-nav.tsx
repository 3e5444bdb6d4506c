"use client";

import Link from "next/link";
import { usePathname } from "next/navigation";
import styles from "./building-nav.module.css";
import { currentEntry, NAV_ENTRIES } from "./nav-entries";

/** Navigation of a building's pages. A client component only to know the current path; it works without script. */
export function BuildingNav({ buildingPath }: { buildingPath: string }) {
  const current = currentEntry(usePathname(), buildingPath);
  return (
    <nav className={styles.nav} aria-label="Building">
      <ul className={styles.list}>
        {NAV_ENTRIES.map((entry) => (
          <li key={entry.path}>
            <Link
              className={styles.link}
              href={buildingPath + entry.path}
              aria-current={entry === current ? "page" : undefined}
            >
              {entry.label}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
