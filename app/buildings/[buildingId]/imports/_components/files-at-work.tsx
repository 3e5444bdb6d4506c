"use client";

import Link from "next/link";
import { useRouter } from "next/navigation";
import { useEffect, useState } from "react";
import type { WorkLine } from "../work-lines";
import styles from "./files-at-work.module.css";

type Props = {
  lines: readonly WorkLine[];
  /** Address of the imports page. */
  path: string;
  /** Follows one run alone. */
  only?: number;
};

const FOLLOW_MS = 1_000;

/**
 * Files that wait for their turn or are worked on. Follows them every second; without script the page loads itself
 * again. When a file has got a step further the whole page is drawn anew, since its other lists change too.
 */
export function FilesAtWork({ lines: atFirst, path, only }: Props) {
  const router = useRouter();
  const [news, setNews] = useState<{ since: Props["lines"]; lines: readonly WorkLine[] } | null>(null);
  const lines = news?.since === atFirst ? news.lines : atFirst;

  useEffect(() => {
    let isOver = false;
    let timer: ReturnType<typeof setTimeout>;
    const follow = async () => {
      const found = await readLines(`${path}/progress`);
      if (isOver) return;
      const next = found?.filter((line) => only === undefined || line.id === only);
      if (next) setNews({ since: atFirst, lines: withGone(atFirst, next) });
      if (next && stagesOf(next) !== stagesOf(atFirst)) router.refresh();
      timer = setTimeout(follow, FOLLOW_MS);
    };
    timer = setTimeout(follow, FOLLOW_MS);
    return () => {
      isOver = true;
      clearTimeout(timer);
    };
  }, [atFirst, only, path, router]);

  if (lines.length === 0) return null;
  return (
    <>
      <ul className={styles.list} aria-label="Files at work">
        {lines.map((line) => (
          <li key={line.id} className={styles.line}>
            <span className={styles.name}>
              {only === undefined ? <Link href={`${path}/${line.id}`}>{line.fileName}</Link> : line.fileName}
            </span>
            <span className={styles.stage}>{line.stageWords}</span>
            <span className={styles.bar}>
              {line.doneFraction === null ? null : (
                <>
                  <progress
                    className={styles.progress}
                    aria-label={`${line.fileName}, ${line.stageWords}`}
                    value={line.doneFraction}
                    max={1}
                  />
                  <span className={styles.percent} aria-hidden="true">
                    {Math.floor(line.doneFraction * 100)} %
                  </span>
                </>
              )}
            </span>
            <span className={styles.facts}>{line.facts}</span>
            <span className={styles.findings}>{line.findings}</span>
            <span className={styles.cancel}>
              {line.canCancel ? (
                <Link href={`${path}/${line.id}/withdraw`} aria-label={`Cancel ${line.fileName}`}>
                  Cancel
                </Link>
              ) : null}
            </span>
          </li>
        ))}
      </ul>
      <noscript>
        <meta httpEquiv="refresh" content="3" />
      </noscript>
    </>
  );
}

async function readLines(address: string): Promise<WorkLine[] | null> {
  try {
    const answer = await fetch(address, { cache: "no-store" });
    return answer.ok ? ((await answer.json()) as { lines: WorkLine[] }).lines : null;
  } catch {
    // The server is away for a moment: the next look tells.
    return null;
  }
}

const stagesOf = (lines: readonly WorkLine[]): string => lines.map(({ id, stage }) => `${id} ${stage}`).join();

/** Files that are through keep their place until the page is drawn anew, so that nothing jumps. */
function withGone(before: readonly WorkLine[], now: readonly WorkLine[]): WorkLine[] {
  const found = new Map(now.map((line) => [line.id, line]));
  const kept = before.map((line) => found.get(line.id) ?? { ...line, canCancel: false });
  const known = new Set(before.map((line) => line.id));
  return [...kept, ...now.filter((line) => !known.has(line.id))];
}
