import { escaped } from "./escaped";

/** Width of every drawing; it is scaled to the text's width, 170 mm on A4. */
export const WIDTH = 680;
/** Where bars begin: names of lines stand left of it. */
export const LEFT = 230;
export const RIGHT = WIDTH - 64;

export type Scale = (value: number) => number;

/** A scale from the least to the most of some values and 0, between two places. */
export function scaleOf(values: readonly number[], from: number, to: number, withZero = true): Scale {
  const all = withZero ? [0, ...values] : values;
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const width = most - least || 1;
  return (value) => from + ((value - least) / width) * (to - from);
}

/** A drawing with its caption; the words for those who do not see it are those of its table. */
export const drawing = (caption: string, heightUnits: number, inside: string): string =>
  `<figure tabindex="0"><svg viewBox="0 0 ${WIDTH} ${heightUnits}" role="img" aria-label="${escaped(caption)}">${HATCH}${inside}</svg><figcaption>${escaped(caption)}</figcaption></figure>`;

/** Hatching for what counts against the change: told apart in grey. */
const HATCH =
  '<defs><pattern id="against" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="5" height="5" fill="#fff"/><line x1="0" y1="0" x2="0" y2="5" stroke="#333" stroke-width="2"/></pattern></defs>';

export const AGAINST = "url(#against)";

export const words = (
  text: string,
  x: number,
  y: number,
  anchor: "start" | "middle" | "end" = "start",
  more = "",
): string => `<text x="${x.toFixed(1)}" y="${y.toFixed(1)}" text-anchor="${anchor}"${more}>${escaped(text)}</text>`;

export const bar = (x1: number, x2: number, y: number, height: number, fill: string): string =>
  `<rect x="${Math.min(x1, x2).toFixed(1)}" y="${y.toFixed(1)}" width="${Math.max(0.8, Math.abs(x2 - x1)).toFixed(1)}" height="${height.toFixed(1)}" fill="${fill}" stroke="#222" stroke-width="0.6"/>`;

export const line = (x1: number, y1: number, x2: number, y2: number, width = 0.8): string =>
  `<line x1="${x1.toFixed(1)}" y1="${y1.toFixed(1)}" x2="${x2.toFixed(1)}" y2="${y2.toFixed(1)}" stroke="#222" stroke-width="${width}"/>`;

/** Names longer than their place are broken in two lines at a space. */
export function nameAt(label: string, y: number): string {
  const most = 38;
  if (label.length <= most) return words(label, LEFT - 10, y + 4, "end");
  const cut = label.lastIndexOf(" ", most);
  const rest = label.slice(cut + 1);
  const second = rest.length > most ? `${rest.slice(0, most - 1)}…` : rest;
  return words(label.slice(0, cut), LEFT - 10, y - 2, "end") + words(second, LEFT - 10, y + 10, "end");
}
