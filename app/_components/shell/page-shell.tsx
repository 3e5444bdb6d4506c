import Link from "next/link";
import type { ReactNode } from "react";
import { BuildingNav } from "./building-nav";
import styles from "./page-shell.module.css";

type Props = {
  /** The building whose pages these are; without it there is no navigation. */
  building?: { id: number | string; name: string };
  /** Who is signed in, by name. */
  userName?: string;
  /** The sign-out button or any other control of the account. */
  signOut?: ReactNode;
  children: ReactNode;
};

/** Page of a signed-in person: title block, navigation of the building, content. */
export function PageShell({ building, userName, signOut, children }: Props) {
  return (
    <div className={styles.sheet}>
      <a className={styles.skip} href="#content">
        Skip to content
      </a>
      <header className={styles.header}>
        <div className={styles.titleBlock}>
          <Link className={styles.product} href="/buildings">
            Setpoint Ledger
          </Link>
          {building ? (
            <Link className={styles.building} href={`/buildings/${building.id}`}>
              {building.name}
            </Link>
          ) : null}
          {userName || signOut ? (
            <span className={styles.account}>
              {userName ? <span>{userName}</span> : null}
              {signOut}
            </span>
          ) : null}
        </div>
        {building ? <BuildingNav buildingPath={`/buildings/${building.id}`} /> : null}
      </header>
      <main id="content" className={styles.content} tabIndex={-1}>
        {children}
      </main>
    </div>
  );
}
