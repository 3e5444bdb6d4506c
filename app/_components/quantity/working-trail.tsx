import Link from "next/link";
import type { Step } from "./working-steps";
import styles from "./working-trail.module.css";

type Props = {
  /** What the whole is one of, and where it stands. */
  root: { label: string; href: string };
  steps: readonly Step[];
  /** Address of the whole; a place inside it is added. */
  page: string;
};

/** The way from a whole working to that of a term deep inside it. */
export function WorkingTrail({ root, steps, page }: Props) {
  return (
    <nav aria-label="Way from the whole" className={styles.trail}>
      <ol>
        <li>
          <Link href={root.href}>{root.label}</Link>
        </li>
        {steps.slice(0, -1).map((step) => (
          <li key={step.at.join(".")}>
            <Link href={step.at.length > 0 ? `${page}?at=${step.at.join(".")}` : page}>{step.label}</Link>
          </li>
        ))}
        <li aria-current="page">{steps.at(-1)?.label}</li>
      </ol>
    </nav>
  );
}
