"use client";

import { useRouter } from "next/navigation";
import { useEffect, useState } from "react";
import type { StandingNoteData } from "@/app/buildings/[buildingId]/standing-note";
import type { StandingLine } from "@/app/buildings/[buildingId]/standing-words";
import styles from "./standing-note.module.css";

type Props = {
  note: StandingNoteData | null;
  /** The page has fields to fill in: without script it is not loaded again under someone's hands. */
  hasFields?: boolean;
};

const FOLLOW_MS = 1_000;

/**
 * Says of when the figures below are, why they are not of now, and how far the next ones are. Follows them every second and
 * has the page drawn anew when there is a new result; without script the page loads itself again, or says how to.
 */
export function StandingNote({ note, hasFields = false }: Props) {
  const router = useRouter();
  const [news, setNews] = useState<{ since: StandingNoteData; line: StandingLine } | null>(null);

  useEffect(() => {
    if (!note) return;
    let isOver = false;
    let timer: ReturnType<typeof setTimeout>;
    const follow = async () => {
      const now = await readNow(note.address);
      if (isOver) return;
      if (now && (now.line === null || now.mark !== note.mark)) router.refresh();
      else if (now?.line) setNews({ since: note, line: now.line });
      timer = setTimeout(follow, FOLLOW_MS);
    };
    timer = setTimeout(follow, FOLLOW_MS);
    return () => {
      isOver = true;
      clearTimeout(timer);
    };
  }, [note, router]);

  if (!note) return null;
  const { title, sentences, doneFraction } = news?.since === note ? news.line : note.line;
  return (
    <section className={styles.note} aria-label="Of when the figures are" data-behind>
      <p className={styles.title}>{title}.</p>
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {doneFraction === null ? null : (
        <progress className={styles.progress} aria-label="Share that is done" value={doneFraction} max={1} />
      )}
      <noscript>
        {hasFields ? <p>Load the page again to see them.</p> : <meta httpEquiv="refresh" content="3" />}
      </noscript>
    </section>
  );
}

async function readNow(address: string): Promise<{ line: StandingLine | null; mark: string } | null> {
  try {
    const answer = await fetch(address, { cache: "no-store" });
    return answer.ok ? ((await answer.json()) as { line: StandingLine | null; mark: string }) : null;
  } catch {
    // The server is away for a moment: the next look tells.
    return null;
  }
}
