import { zoneTable } from "@/lib/time/zone-table";
import { type ByteSource, bytesInMemory } from "./byte-source";
import { combineMembers, nameInZip, repeatedAmong } from "./combine-members";
import type { FileFacts } from "./file-facts";
import type { HeldParts } from "./held-parts";
import { isReadInParts, type PlainInput, readPlainParts } from "./read-plain-parts";
import { brokenZip, readZip, type ZipMember } from "./read-zip";
import { isZip, NOT_TEXT, workbookRefusal } from "./refuse-non-text";
import { refusedResult } from "./refused-result";
import type { ReadProgress, TrendFileInput, TrendFileResult, TrendPart } from "./trend-file";

export type TrendSourceInput = Omit<TrendFileInput, "bytes"> & {
  source: ByteSource;
  /** Facts of the same bytes, from the result of an earlier reading. */
  facts?: FileFacts;
  /** Bytes that are read at a time: memory against speed. */
  blockBytes?: number;
};

const BLOCK_BYTES = 4_000_000;
/** Largest zip: it is held whole, its files are unpacked one at a time. */
const MOST_ZIP_BYTES = 200_000_000;
/** Times that a file is read again because its end shows its beginning in another light. */
const MOST_TRIES = 6;

/**
 * Reads a trend export of any size (a CSV in any of its many shapes, or a zip of them) part by part, in bounded memory.
 * The parts stand for nothing when the result, which is returned at the end, asks or refuses. Throws a RangeError for a
 * time zone that is none.
 */
export async function* readTrendParts(input: TrendSourceInput): AsyncGenerator<TrendPart, TrendFileResult> {
  const isPacked = isZip(input.source.read(0, 4));
  const blockBytes = input.blockBytes ?? BLOCK_BYTES;
  // In parts, readings can be handed out only once it is known what the whole file makes of them.
  const known =
    input.facts ??
    (isPacked || isReadInParts(input.source, blockBytes) ? (await inspectTrendSource(input)).facts : undefined);
  return yield* readOnce(input, known ?? {}, "readings");
}

/**
 * Reads a file to its end for what it holds; tells each part's progress. Throw from `onProgress` to stop. The parts of a
 * text file are handed to `held`; those of a zip are not, for the names of its points are known only at its end.
 */
export async function inspectTrendSource(
  input: TrendSourceInput,
  onProgress?: (progress: ReadProgress) => void | Promise<void>,
  held?: HeldParts,
): Promise<TrendFileResult> {
  const hold = held && !isZip(input.source.read(0, 4)) ? held : null;
  const parts = readOnce(input, input.facts ?? {}, "inspection");
  for (;;) {
    const next = await parts.next();
    if (next.done) return next.value;
    hold?.add(next.value);
    await onProgress?.(next.value.progress);
  }
}

async function* readOnce(
  input: TrendSourceInput,
  facts: Partial<FileFacts>,
  purpose: "inspection" | "readings",
): AsyncGenerator<TrendPart, TrendFileResult> {
  // Throws for a name that is none, before anything is read.
  zoneTable(input.timeZone);
  const { fileName, source } = input;
  if (!isZip(source.read(0, 4))) return yield* readPlain(plainInput(input, fileName, source, facts), purpose);
  if (source.size > MOST_ZIP_BYTES) {
    const sentence = `The zip has ${Math.round(source.size / 1e6)} MB; at most ${MOST_ZIP_BYTES / 1e6} MB are taken at once. Unpack it and import its files, which may be of any size.`;
    return refusedResult(fileName, { code: "too-large", sentence });
  }
  const zip = await readZip(source.read(0, source.size));
  if (zip.status === "workbook") return refusedResult(fileName, workbookRefusal(fileName));
  if (zip.status === "refused") return refusedResult(fileName, zip.refusal);
  try {
    return yield* readMembers(input, zip.members, facts, purpose);
  } finally {
    zip.close();
  }
}

async function* readMembers(
  input: TrendSourceInput,
  members: readonly ZipMember[],
  facts: Partial<FileFacts>,
  purpose: "inspection" | "readings",
): AsyncGenerator<TrendPart, TrendFileResult> {
  const repeated = new Set(facts.repeatedNames ?? []);
  const results: TrendFileResult[] = [];
  const before = { rows: 0, readings: 0 };
  for (const [i, member] of members.entries()) {
    let bytes: Uint8Array;
    try {
      bytes = await member.unpack();
    } catch (error) {
      return refusedResult(input.fileName, brokenZip(error));
    }
    const parts = readPlain(
      plainInput(input, member.name, bytesInMemory(bytes), facts.members?.[member.name] ?? {}),
      purpose,
    );
    const bytesRead = Math.round((input.source.size * (i + 1)) / members.length);
    let next = await parts.next();
    for (; !next.done; next = await parts.next()) {
      const { points, progress, isFirst } = next.value;
      yield {
        points: points.map((point) => ({
          ...point,
          name: nameInZip(point.name, member.name, repeated),
          file: member.name,
        })),
        progress: {
          ...progress,
          bytesRead,
          bytesInFile: input.source.size,
          rows: before.rows + progress.rows,
          readings: before.readings + progress.readings,
        },
        isFirst: isFirst && i === 0,
      };
    }
    before.rows += next.value.rows.rowsInFile;
    before.readings += next.value.points.reduce((sum, point) => sum + point.readings, 0);
    results.push(next.value);
  }
  const combined = combineMembers(input.fileName, results);
  const ofMembers = results.flatMap(({ file, facts: own }) => (own ? [[file, own] as const] : []));
  return {
    ...combined,
    facts: {
      encoding: "utf-8",
      decimal: ".",
      order: { status: "not-needed" },
      cells: {},
      repeatedNames: [...repeatedAmong(results)],
      members: Object.fromEntries(ofMembers),
    },
  };
}

/** Reads a text file, again where its end says that its beginning was mistaken: an inspection hands out no readings. */
async function* readPlain(
  input: PlainInput,
  purpose: "inspection" | "readings",
): AsyncGenerator<TrendPart, TrendFileResult> {
  if (isZip(input.source.read(0, 4))) {
    const sentence = "A zip within a zip is not opened. Unpack it and import its files.";
    return refusedResult(input.file, { ...NOT_TEXT, sentence });
  }
  let { facts } = input;
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const end = yield* readPlainParts({ ...input, facts });
    if (end.status === "done") return end.result;
    facts = end.facts;
    if (purpose === "readings" && isReadInParts(input.source, input.blockBytes))
      throw new Error(`${input.file} does not read as it did at its inspection`);
  }
  throw new Error(`${input.file} reads otherwise each time`);
}

const plainInput = (
  { timeZone, locale, answers, blockBytes }: TrendSourceInput,
  file: string,
  source: ByteSource,
  facts: Partial<FileFacts>,
): PlainInput => ({
  file,
  fileStem: stemOf(file),
  source,
  timeZone,
  locale,
  answers: answers ?? {},
  facts,
  blockBytes: blockBytes ?? BLOCK_BYTES,
});

/** `VAV-2-14_ZN-T` of `export/VAV-2-14_ZN-T.csv`. */
const stemOf = (fileName: string): string =>
  (fileName.split(/[/\\]/).at(-1) ?? fileName).replace(/\.(?:csv|txt|tsv|tab|dat|log)$/i, "");
