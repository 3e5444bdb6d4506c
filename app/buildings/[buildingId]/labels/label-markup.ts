import { encode } from "uqr";
import { type LabelSheet, labelCorner, labelsASheet } from "@/lib/services/labels/label-sheets";
import type { PrintLabel } from "@/lib/services/labels/read";

/** White round the modules of a code: four of them (ISO/IEC 18004, from memory). */
const QUIET_MODULES = 4;
const INSET_MM = 1.5;
/** Width of an average letter by its size: no word may run over the edge of its label. */
const LETTER_WIDTH = 0.55;
/** Height that the small words share, their largest size, and from line to line by the size. */
const WORDS_SHARE = 0.58;
const LARGEST_SHARE = 0.085;
const LINE_STEP = 1.3;

/** Sheets of labels as one page to print: a drawing a sheet, in mm, the code at the left and the words beside it. */
export function labelPage(
  sheet: LabelSheet,
  labels: readonly PrintLabel[],
  site: { origin: string; skip: number; title: string },
): string {
  const each = labelsASheet(sheet);
  const placed = labels.map((label, at) => ({ label, place: at + site.skip }));
  const count = Math.max(1, Math.ceil((labels.length + site.skip) / each));
  const { pageWidthMm: width, pageHeightMm: height } = sheet;
  const sheets = Array.from({ length: count }, (_, at) =>
    placed
      .filter(({ place }) => Math.floor(place / each) === at)
      .map(({ label, place }) => labelDrawing(sheet, label, place % each, site.origin))
      .join(""),
  );
  const drawings = sheets.map(
    (drawn) =>
      `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">${drawn}</svg>`,
  );
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><link rel="icon" href="/icon.svg"><title>${escaped(site.title)}</title><style>${styleOf(width, height)}</style></head><body>${drawings.join("")}</body></html>`;
}

const styleOf = (widthMm: number, heightMm: number): string =>
  `@page{size:${widthMm}mm ${heightMm}mm;margin:0}html,body{margin:0;background:#fff}svg{display:block;break-after:page;break-inside:avoid}svg:last-child{break-after:auto}text{font-family:sans-serif;fill:#000}@media screen{svg{outline:1px solid #ccc;margin-bottom:8px}}`;

function labelDrawing(sheet: LabelSheet, label: PrintLabel, place: number, origin: string): string {
  const { xMm, yMm } = labelCorner(sheet, place);
  const side = Math.min(sheet.labelHeightMm - 2 * INSET_MM, sheet.labelWidthMm * 0.5);
  const code = codeDrawing(origin + label.path, xMm + INSET_MM, yMm + (sheet.labelHeightMm - side) / 2, side);
  const left = xMm + INSET_MM + side + INSET_MM;
  const room = sheet.labelWidthMm - side - 3 * INSET_MM;
  const headSize = Math.min(sheet.labelHeightMm * 0.2, room / (LETTER_WIDTH * Math.max(1, label.head.length)));
  const words = [wordsAt(label.head, left, yMm + sheet.labelHeightMm * 0.28, headSize, ' font-weight="700"')];
  const { size, lines } = fitted(
    label.lines,
    room,
    sheet.labelHeightMm * WORDS_SHARE,
    sheet.labelHeightMm * LARGEST_SHARE,
  );
  for (const [at, line] of lines.entries())
    words.push(
      wordsAt(line, left, yMm + sheet.labelHeightMm * (1 - WORDS_SHARE) + size * LINE_STEP * (at + 0.3), size),
    );
  return code + words.join("");
}

const wordsAt = (text: string, xMm: number, yMm: number, sizeMm: number, more = ""): string =>
  `<text x="${mm(xMm)}" y="${mm(yMm)}" font-size="${mm(sizeMm)}"${more}>${escaped(text)}</text>`;

/** The largest size at which all of the lines, broken where they must be, stand below each other. */
function fitted(texts: readonly string[], roomMm: number, heightMm: number, largestMm: number) {
  for (let size = largestMm; ; size *= 0.92) {
    const lines = texts.flatMap((text) => wrapped(text, Math.max(1, Math.floor(roomMm / (LETTER_WIDTH * size)))));
    const isWide = lines.some((line) => line.length * LETTER_WIDTH * size > roomMm);
    if ((!isWide && lines.length * size * LINE_STEP <= heightMm) || size < largestMm / 3) return { size, lines };
  }
}

/** Lines of at most so many letters, broken between words. */
function wrapped(text: string, most: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(" ").filter((each) => each !== "")) {
    const last = lines.at(-1);
    if (last !== undefined && `${last} ${word}`.length <= most) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** A QR code of medium error correction as one path; a scratched label must still be read. */
function codeDrawing(text: string, xMm: number, yMm: number, sideMm: number): string {
  const { data, size } = encode(text, { ecc: "M", border: QUIET_MODULES });
  const module = sideMm / size;
  let path = "";
  for (const [row, modules] of data.entries())
    for (const [column, isDark] of modules.entries())
      if (isDark)
        path += `M${mm(xMm + column * module)} ${mm(yMm + row * module)}h${mm(module)}v${mm(module)}h-${mm(module)}z`;
  return `<path d="${path}" shape-rendering="crispEdges"/>`;
}

const mm = (value: number): string => String(Number(value.toFixed(3)));

const escaped = (text: string): string =>
  text.replace(/[&<>"]/g, (sign) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[sign] ?? sign);
