import { type ZoneTable, zoneTable } from "@/lib/time/zone-table";

/** Locales whose everyday words for zones differ; each knows only those of its own part of the world. */
const LOCALES = ["en-US", "en-CA", "en-GB", "en-AU", "en-NZ", "en-IN", "en-ZA", "de", "fr", "es", "it", "nl"];

/** The offset that a zone calls by a word (in capitals), in seconds east of UTC; undefined for words of other zones. */
export type ZoneWords = { get(word: string): number | undefined };

/**
 * Words by which a zone calls its own offsets (`EST`, `EDT`), with the offset in seconds, and UTC's. The same letters
 * mean other offsets elsewhere (CST, IST), so a word of another zone is not understood. They are collected when the
 * first one is looked up: most files have none.
 */
export const zoneWords = (timeZone: string): ZoneWords => ({ get: (word) => wordsOf(timeZone).get(word) });

function wordsOf(timeZone: string): ReadonlyMap<string, number> {
  const known = wordsByZone.get(timeZone);
  if (known) return known;
  const made = collectWords(timeZone, zoneTable(timeZone));
  wordsByZone.set(timeZone, made);
  return made;
}

const wordsByZone = new Map<string, ReadonlyMap<string, number>>();

function collectWords(timeZone: string, table: ZoneTable): ReadonlyMap<string, number> {
  const words = new Map<string, number>([
    ["Z", 0],
    ["UTC", 0],
    ["GMT", 0],
  ]);
  for (const year of [2010, 2018, 2026]) {
    for (const month of [1, 4, 7, 10]) {
      const instant = Date.UTC(year, month - 1, 15);
      for (const locale of LOCALES) {
        const format = new Intl.DateTimeFormat(locale, { timeZone, timeZoneName: "short" });
        const word = format.formatToParts(instant).find((part) => part.type === "timeZoneName")?.value ?? "";
        if (/^[A-Za-z]{2,5}$/.test(word)) words.set(word.toUpperCase(), table.offsetAt(instant / 1000));
      }
    }
  }
  return words;
}
