import { Buffer } from "node:buffer";
import { readXlsx } from "hucre/xlsx";
import { fromBufferPromise } from "yauzl";
import { decodeText } from "../tables/decode-text";
import { splitTable } from "../tables/split-table";

/** A sheet as rows of trimmed texts; `line` is the line of the text file or the row of the workbook. */
export type RegisterSheet = { name: string; rows: { line: number; cells: string[] }[] };

export type RegisterFile =
  | { status: "ok"; sheets: RegisterSheet[] }
  | { status: "refused"; code: "not-a-table" | "damaged" | "empty" | "too-long"; message: string };

/** Rows that are read of a sheet: no register of a building has more. */
export const MOST_REGISTER_ROWS = 20_000;
const DELIMITERS = [",", ";", "\t", "|"];

const refused = (code: Extract<RegisterFile, { status: "refused" }>["code"], message: string): RegisterFile => ({
  status: "refused",
  code,
  message,
});

/** Opens somebody's own register: an XLSX workbook with its sheets, or a CSV file as one sheet. */
export async function openRegisterFile(file: { name: string; bytes: Uint8Array }): Promise<RegisterFile> {
  const opened = isZip(file.bytes) ? await openWorkbook(file.bytes) : openText(file.bytes);
  if (opened.status !== "ok") return opened;
  const sheets = opened.sheets.filter((sheet) => sheet.rows.some(({ cells }) => cells.some((cell) => cell !== "")));
  if (sheets.length === 0) return refused("empty", "The file holds no cell with anything in it.");
  if (sheets.some((sheet) => sheet.rows.length > MOST_REGISTER_ROWS))
    return refused("too-long", `A sheet has more than ${MOST_REGISTER_ROWS} rows: take out what is no device.`);
  return { status: "ok", sheets };
}

const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b;

/** Most that a workbook may say it unpacks to [bytes]: a small file that says more is no register. */
const MOST_UNPACKED_BYTES = 200_000_000;

async function openWorkbook(bytes: Uint8Array): Promise<RegisterFile> {
  try {
    const zip = await fromBufferPromise(Buffer.from(bytes));
    let unpacked = 0;
    for await (const entry of zip.eachEntry()) unpacked += entry.uncompressedSize;
    if (unpacked > MOST_UNPACKED_BYTES)
      return refused("too-long", "The workbook unpacks to more than 200 MB: take pictures and other sheets out of it.");
    const { sheets } = await readXlsx(bytes, { maxRows: MOST_REGISTER_ROWS + 1 });
    return {
      status: "ok",
      sheets: sheets.map(({ name, rows }) => ({
        name,
        rows: rows.map((cells, at) => ({ line: at + 1, cells: cells.map(cellText) })),
      })),
    };
  } catch {
    return refused(
      "damaged",
      "This is no XLSX workbook that can be opened, or it is locked with a password. Save the sheet as CSV and bring that in.",
    );
  }
}

function cellText(cell: string | number | boolean | Date | null): string {
  if (cell === null) return "";
  if (cell instanceof Date) return cell.toISOString().slice(0, 10);
  return String(cell).replace(/\s+/g, " ").trim();
}

/** The delimiter that makes the most columns in most of the rows. */
function openText(bytes: Uint8Array): RegisterFile {
  const decoded = decodeText(bytes);
  if (decoded.status !== "ok") return refused("not-a-table", decoded.message);
  const tries = DELIMITERS.map((delimiter) => {
    const { records } = splitTable(decoded.text, delimiter);
    const widths = records.map((record) => record.cells.length).sort((a, b) => a - b);
    return { records, width: widths[Math.floor(widths.length / 2)] ?? 0 };
  });
  const best = tries.reduce((a, b) => (b.width > a.width ? b : a));
  if (!/[\p{L}\p{N}]/u.test(decoded.text)) return { status: "ok", sheets: [] };
  if (best.width < 2)
    return refused(
      "not-a-table",
      "The file has one column only. A register has a row a device and columns for label, sort and place.",
    );
  return {
    status: "ok",
    sheets: [{ name: "", rows: best.records.map(({ line, cells }) => ({ line, cells: [...cells] })) }],
  };
}
