import styles from "./report.module.css";

type Top = "short" | "long" | "suit" | "jacket";
type Bottom = "shorts" | "skirt" | "trousers" | "suit";

/** What each ensemble of `lib/comfort/ensembles` is drawn of. */
const DRAWN: Record<string, { top: Top; bottom: Bottom }> = {
  "shorts-short-sleeves": { top: "short", bottom: "shorts" },
  "skirt-short-sleeves": { top: "short", bottom: "skirt" },
  "trousers-short-sleeves": { top: "short", bottom: "trousers" },
  "trousers-long-sleeves": { top: "long", bottom: "trousers" },
  "skirt-long-sleeves": { top: "long", bottom: "skirt" },
  "sweat-suit": { top: "suit", bottom: "suit" },
  "jacket-trousers": { top: "jacket", bottom: "trousers" },
};

const TORSO = "M17 17 L31 17 L32 39 L16 39 Z";
const SHORT_SLEEVES = "M17 17 L10 27 L14.5 29.5 L17.5 24.5 Z M31 17 L38 27 L33.5 29.5 L30.5 24.5 Z";
const LONG_SLEEVES = "M17 17 L8 38 L12 39.5 L17.5 27 Z M31 17 L40 38 L36 39.5 L30.5 27 Z";

const BOTTOMS: Record<Bottom, string> = {
  shorts: "M16 39 L32 39 L33 51 L25.5 51 L24 44 L22.5 51 L15 51 Z",
  skirt: "M16 39 L32 39 L36 56 L12 56 Z",
  trousers: "M16 39 L32 39 L31.5 68 L26 68 L24 45 L22 68 L16.5 68 Z",
  suit: "M15.5 39 L32.5 39 L33 65 L31 68 L26 68 L24 46 L22 68 L17 68 L15 65 Z",
};

/** A plain figure in an ensemble: skin in outline, clothes filled; decoration beside its words. */
export function ClothingPicture({ ensemble }: { ensemble: string }) {
  const { top, bottom } = DRAWN[ensemble] ?? { top: "long", bottom: "trousers" };
  const sleeves = top === "short" ? SHORT_SLEEVES : LONG_SLEEVES;
  return (
    <svg className={styles.figure} viewBox="0 0 48 72" aria-hidden="true" focusable="false">
      <circle cx="24" cy="9" r="5.5" className={styles.skin} />
      <path d="M10 27 L8 38 M38 27 L40 38 M19.5 50 L19.5 68 M28.5 50 L28.5 68" className={styles.skin} />
      <path d={`${TORSO} ${sleeves}`} className={styles.cloth} />
      <path d={BOTTOMS[bottom]} className={styles.clothBelow} />
      {top === "jacket" ? (
        <path d="M16.5 17 L15 43 L23.4 43 L23.4 26 Z M31.5 17 L33 43 L24.6 43 L24.6 26 Z" className={styles.jacket} />
      ) : null}
      {top === "suit" ? <path d="M24 17 L24 39 M15.5 38 L32.5 38" className={styles.seam} /> : null}
    </svg>
  );
}
