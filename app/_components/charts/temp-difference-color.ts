/**
 * "vik" of the Scientific colour maps by Fabio Crameri, 17 even samples of its 256 colours. MIT License,
 * Copyright (c) 2023 Fabio Crameri, doi:10.5281/zenodo.1243862. Diverging, perceptually even, safe for colour-vision
 * deficiency (Crameri, Shephard and Heron 2020, doi:10.1038/s41467-020-19160-7).
 */
const VIK: readonly (readonly [number, number, number])[] = [
  [0, 18, 97],
  [2, 43, 113],
  [3, 68, 129],
  [12, 94, 146],
  [48, 125, 166],
  [97, 158, 189],
  [148, 190, 210],
  [198, 219, 230],
  [236, 229, 224],
  [233, 204, 186],
  [220, 172, 144],
  [207, 142, 104],
  [195, 114, 67],
  [179, 83, 31],
  [148, 47, 6],
  [116, 21, 6],
  [89, 0, 8],
];

/** Difference at which the colour is full; beyond it the colour stays. */
export const FULL_COLOR_K = 4;

/** The map is used from its third sample to its third last: beyond them the warm end is the red kept for danger. */
const REACH = 6;

type Rgb = [number, number, number];

/** Position -1 to 1 on the whole of vik. */
export function vikAt(position: number): Rgb {
  const place = ((Math.min(1, Math.max(-1, position)) + 1) / 2) * (VIK.length - 1);
  const index = Math.min(VIK.length - 2, Math.floor(place));
  const low = VIK[index] as Rgb;
  const high = VIK[index + 1] as Rgb;
  const mix = (channel: 0 | 1 | 2): number =>
    Math.round(low[channel] + (high[channel] - low[channel]) * (place - index));
  return [mix(0), mix(1), mix(2)];
}

/** Colour of a temperature difference in K, cold (blue) to warm (brown), pale at zero; the same in light and dark. */
export function tempDifferenceColor(differenceK: number): string {
  return hex(vikAt((Math.max(-1, Math.min(1, differenceK / FULL_COLOR_K)) * REACH) / 8));
}

/** Ink that can be read on that colour: the darker or the paler of two, by WCAG contrast. */
export function tempDifferenceInk(differenceK: number): string {
  const ground = tempDifferenceColor(differenceK);
  return contrastRatio(ground, DARK_INK) >= contrastRatio(ground, PALE_INK) ? DARK_INK : PALE_INK;
}

const DARK_INK = "#000000";
const PALE_INK = "#ffffff";

/** Contrast ratio of two #rrggbb colours: WCAG 2.2, definitions of contrast ratio and relative luminance. */
export function contrastRatio(a: string, b: string): number {
  const [high, low] = [relativeLuminance(a), relativeLuminance(b)].sort((x, y) => y - x) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

export function relativeLuminance(color: string): number {
  const channel = (at: number): number => {
    const share = Number.parseInt(color.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
}

const hex = (rgb: Rgb): string => `#${rgb.map((channel) => channel.toString(16).padStart(2, "0")).join("")}`;
