import { isTimeZone } from "@/lib/time/zone-table";
import { combineMembers } from "./combine-members";
import { decodeText } from "./decode";
import { readText, refusedReading } from "./read-text";
import { readZip } from "./read-zip";
import { isZip, NOT_TEXT, refuseBytes, refuseText, workbookRefusal } from "./refuse-non-text";
import type { TrendFileInput, TrendReading } from "./trend-file";

const MOST_BYTES = 200_000_000;

/**
 * Reads a trend export (a CSV in any of its many shapes, or a zip of them) into points with their readings. Pure:
 * bytes in, result out. Throws a RangeError for a time zone that is none.
 */
export async function readTrendFile(input: TrendFileInput): Promise<TrendReading> {
  if (!isTimeZone(input.timeZone)) throw new RangeError(`"${input.timeZone}" is not an IANA time zone.`);
  const { fileName, bytes } = input;
  if (bytes.length > MOST_BYTES) {
    return refusedReading(fileName, {
      code: "too-large",
      sentence: `The file has ${Math.round(bytes.length / 1e6)} MB; at most ${MOST_BYTES / 1e6} MB are taken at once. Export a shorter period, or fewer points.`,
    });
  }
  if (!isZip(bytes)) return readPlainFile(input);
  const zip = await readZip(bytes);
  if (zip.status === "workbook") return refusedReading(fileName, workbookRefusal(fileName));
  if (zip.status === "refused") return refusedReading(fileName, zip.refusal);
  return combineMembers(
    fileName,
    zip.members.map((member) => readPlainFile({ ...input, fileName: member.name, bytes: member.bytes })),
  );
}

function readPlainFile({ fileName, bytes, timeZone, locale, answers }: TrendFileInput): TrendReading {
  const refusal = isZip(bytes)
    ? { ...NOT_TEXT, sentence: "A zip within a zip is not opened. Unpack it and import its files." }
    : refuseBytes(bytes, fileName);
  if (refusal) return refusedReading(fileName, refusal);
  const decoded = decodeText(bytes);
  if (!decoded) return refusedReading(fileName, NOT_TEXT);
  const noTable = refuseText(decoded.text);
  if (noTable) return refusedReading(fileName, noTable, { encoding: decoded.encoding });
  return readText({ file: fileName, fileStem: stemOf(fileName), ...decoded, timeZone, locale, answers: answers ?? {} });
}

/** `VAV-2-14_ZN-T` of `export/VAV-2-14_ZN-T.csv`. */
export const stemOf = (fileName: string): string =>
  (fileName.split(/[/\\]/).at(-1) ?? fileName).replace(/\.(?:csv|txt|tsv|tab|dat|log)$/i, "");
