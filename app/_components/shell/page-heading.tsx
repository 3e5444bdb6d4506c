import type { ReactNode } from "react";
import styles from "./page-heading.module.css";
import { Section } from "./section";

type Props = {
  title: string;
  /** One sentence that says what the page says. */
  lede?: ReactNode;
  /** The headline figure, when the page has one: stands above the lede. */
  figure?: ReactNode;
  /** Stands in the margin. */
  remarks?: ReactNode;
  /** What belongs to the headline: its picture, a short summary. */
  children?: ReactNode;
};

/** Title of a page, its headline figure and its one sentence. */
export function PageHeading({ title, lede, figure, remarks, children }: Props) {
  return (
    <Section remarks={remarks}>
      <div className={styles.heading}>
        <h1 className={figure ? styles.overFigure : undefined}>{title}</h1>
        {figure ? <div className={styles.figure}>{figure}</div> : null}
        {lede ? <p className={styles.lede}>{lede}</p> : null}
      </div>
      {children}
    </Section>
  );
}
