import Link from "next/link";
import styles from "./pager.module.css";

type Props = {
  /** What is counted: "files", "rows". */
  many: string;
  page: number;
  pages: number;
  /** Number of the first thing shown, from 1, and how many are. */
  first: number;
  shown: number;
  count: number;
  /** Address without the page; it may have a query. */
  href: (page: number) => string;
};

/** Leads through the pages of a long list; nothing where there is one page. */
export function Pager({ many, page, pages, first, shown, count, href }: Props) {
  if (pages <= 1) return null;
  return (
    <nav className={styles.pager} aria-label={`Pages of ${many}`}>
      <span>
        {first} to {first + shown - 1} of {count} {many}
      </span>
      {page > 1 ? <Link href={href(page - 1)}>Page before</Link> : <span className={styles.none}>Page before</span>}
      {page < pages ? <Link href={href(page + 1)}>Next page</Link> : <span className={styles.none}>Next page</span>}
    </nav>
  );
}
