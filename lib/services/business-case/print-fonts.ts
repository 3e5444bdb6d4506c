import { readFileSync } from "node:fs";
import path from "node:path";

/** Letters of the text and of formulas, and the signs that each file has. */
const FILES = [
  { file: "latin-wght-normal", style: "normal", range: null },
  { file: "latin-wght-italic", style: "italic", range: null },
  { file: "greek-wght-normal", style: "normal", range: "U+0370-03FF" },
  { file: "greek-wght-italic", style: "italic", range: "U+0370-03FF" },
] as const;

let faces: string | undefined;

/** Faces of the tool's own text family, with the fonts inside: a case that is kept must not look for them later. */
export function printFontFaces(): string {
  faces ??= FILES.map(({ file, style, range }) => {
    const name = `source-sans-3-${file}.woff2`;
    const bytes = readFileSync(path.join(process.cwd(), "node_modules/@fontsource-variable/source-sans-3/files", name));
    const signs = range === null ? "" : `unicode-range:${range};`;
    return `@font-face{font-family:'Case Text';font-style:${style};font-weight:200 900;${signs}src:url(data:font/woff2;base64,${bytes.toString("base64")}) format('woff2')}`;
  }).join("");
  return faces;
}
