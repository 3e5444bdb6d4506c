import { type Entry, fromBuffer, type ZipFile } from "yauzl";
import type { TrendRefusal } from "./trend-file";

/** A file of a zip, unpacked when it is asked for. */
export type ZipMember = { name: string; unpack(): Promise<Uint8Array> };
export type ZipContents =
  | { status: "members"; members: ZipMember[]; close(): void }
  | { status: "workbook" }
  | { status: "refused"; refusal: TrendRefusal };

const MOST_MEMBERS = 500;
const MOST_BYTES = 1_000_000_000;

/** Members of a zip that may be exports: no folders, no hidden or read-me files. Sizes are checked before unpacking. */
export async function readZip(bytes: Uint8Array): Promise<ZipContents> {
  let zip: ZipFile | undefined;
  try {
    zip = await open(bytes);
    const entries = await list(zip);
    if (entries.some((entry) => entry.fileName === "[Content_Types].xml")) return { status: "workbook" };
    const wanted = entries.filter((entry) => isExport(entry.fileName));
    const unpacked = wanted.reduce((sum, entry) => sum + entry.uncompressedSize, 0);
    if (wanted.length > MOST_MEMBERS || unpacked > MOST_BYTES) {
      return {
        status: "refused",
        refusal: {
          code: "too-large",
          sentence: `The zip holds ${wanted.length.toLocaleString("en-US")} files, ${Math.round(unpacked / 1e6).toLocaleString("en-US")} MB unpacked; at most ${MOST_MEMBERS} files and ${MOST_BYTES / 1e6} MB are taken at once. Split it and import the parts.`,
        },
      };
    }
    if (wanted.length === 0) {
      return {
        status: "refused",
        refusal: {
          code: "no-files-in-zip",
          sentence: "The zip holds no CSV or text files. Put the exports into it, or import them one by one.",
        },
      };
    }
    const opened = zip;
    zip = undefined;
    const members = wanted.map((entry) => ({ name: entry.fileName, unpack: () => unpack(opened, entry) }));
    return { status: "members", members, close: () => opened.close() };
  } catch (error) {
    // A workbook cut short still says what it is in its first bytes.
    if (new TextDecoder("latin1").decode(bytes.subarray(0, 4096)).includes("[Content_Types].xml"))
      return { status: "workbook" };
    return { status: "refused", refusal: brokenZip(error) };
  } finally {
    zip?.close();
  }
}

export const brokenZip = (error: unknown): TrendRefusal => ({
  code: "broken-zip",
  sentence: `The zip cannot be unpacked (${error instanceof Error ? error.message : "unknown fault"}). Make it again, or import the files one by one.`,
});

function isExport(name: string): boolean {
  const base = name.split("/").at(-1) ?? "";
  if (base === "" || base.startsWith(".") || name.startsWith("__MACOSX/") || /(?:^|\/)\./.test(name)) return false;
  return /\.(?:csv|txt|tsv|tab|dat|log)$/i.test(base) && !/^(?:read ?-?_?me|licen[cs]e|notice)\b/i.test(base);
}

const open = (bytes: Uint8Array): Promise<ZipFile> =>
  new Promise((resolve, reject) => {
    const options = { lazyEntries: true, autoClose: false, validateEntrySizes: true };
    fromBuffer(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength), options, (error, zip) =>
      zip ? resolve(zip) : reject(error),
    );
  });

const list = (zip: ZipFile): Promise<Entry[]> =>
  new Promise((resolve, reject) => {
    const entries: Entry[] = [];
    zip.on("entry", (entry: Entry) => {
      entries.push(entry);
      if (entries.length > 20_000) reject(new Error("more than 20,000 members"));
      else zip.readEntry();
    });
    zip.on("end", () => resolve(entries));
    zip.on("error", reject);
    zip.readEntry();
  });

const unpack = (zip: ZipFile, entry: Entry): Promise<Uint8Array> =>
  new Promise((resolve, reject) => {
    zip.openReadStream(entry, (error, stream) => {
      if (!stream) return reject(error);
      const parts: Buffer[] = [];
      stream.on("data", (part: Buffer) => parts.push(part));
      stream.on("end", () => resolve(Buffer.concat(parts)));
      stream.on("error", reject);
    });
  });
