import type { TrendRefusal } from "./trend-file";

const startsWith = (bytes: Uint8Array, signature: readonly number[]): boolean =>
  signature.every((byte, i) => bytes[i] === byte);

export const isZip = (bytes: Uint8Array): boolean =>
  startsWith(bytes, [0x50, 0x4b, 0x03, 0x04]) || startsWith(bytes, [0x50, 0x4b, 0x05, 0x06]);

/** Refusal of a workbook; its name is mentioned when it promises something else. */
export function workbookRefusal(fileName: string): TrendRefusal {
  const ending = /\.[a-z0-9]{1,5}$/i.exec(fileName)?.[0].toLowerCase();
  const disguise = ending && !/^\.xl/.test(ending) ? ` with a ${ending} name` : "";
  return {
    code: "workbook",
    sentence: `This is a spreadsheet workbook${disguise}, not a text table. Open it, save it as CSV and import that; better still, import the export itself.`,
  };
}

/** Refuses bytes that are no text: workbooks, packed files, documents. Zips are looked into elsewhere. */
export function refuseBytes(bytes: Uint8Array, fileName: string): TrendRefusal | null {
  if (bytes.length === 0) {
    return {
      code: "empty-file",
      sentence: "The file is empty (0 bytes). Export it again and check the file size before importing.",
    };
  }
  if (startsWith(bytes, [0xd0, 0xcf, 0x11, 0xe0])) return workbookRefusal(fileName);
  const kind = startsWith(bytes, [0x1f, 0x8b])
    ? "packed (gzip)"
    : startsWith(bytes, [0x25, 0x50, 0x44, 0x46])
      ? "a PDF document"
      : startsWith(bytes, [0x37, 0x7a, 0xbc, 0xaf])
        ? "packed (7z)"
        : startsWith(bytes, [0x89, 0x50, 0x4e, 0x47]) || startsWith(bytes, [0xff, 0xd8, 0xff])
          ? "a picture"
          : null;
  if (!kind) return null;
  return {
    code: "not-text",
    sentence: `The file is ${kind}, not a text table. Unpack it or export the trends as CSV, then import that.`,
  };
}

export const NOT_TEXT: TrendRefusal = {
  code: "not-text",
  sentence:
    "The file holds bytes that are no text, so it is not a CSV export. Export the trends as CSV and import that.",
};

/** Refuses text that is no table: web pages, JSON, XML. */
export function refuseText(text: string): TrendRefusal | null {
  const start = text.slice(0, 2000).trimStart().toLowerCase();
  if (start === "") {
    return { code: "empty-file", sentence: "The file holds nothing but blank space. Export it again." };
  }
  if (start.startsWith("<!doctype html") || start.startsWith("<html") || /^<(head|body|script|meta)\b/.test(start)) {
    return {
      code: "web-page",
      sentence:
        "This is a web page, most likely a sign-in page, not a trend export. Sign in to the control system, download the export again and import that file.",
    };
  }
  const form = start.startsWith("<?xml") || /^<[a-z]/.test(start) ? "XML" : /^[{[]\s*["{[]/.test(start) ? "JSON" : null;
  if (!form) return null;
  return {
    code: "not-a-trend-export",
    sentence: `The file is ${form}, not a table of times and values. Export the trends as CSV and import that.`,
  };
}
