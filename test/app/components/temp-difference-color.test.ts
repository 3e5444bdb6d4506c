import { describe, expect, it } from "vitest";
import {
  contrastRatio,
  FULL_COLOR_K,
  relativeLuminance,
  tempDifferenceColor,
  tempDifferenceInk,
  vikAt,
} from "@/app/_components/charts/temp-difference-color";

/**
 * Published: eight and thirteen even samples of vik (Crameri, Scientific colour maps), taken from the original 256
 * colours by the colour tables of xbmc/visualization.goom (color_data, VIK_8 and VIK_13), times 255. They fall between
 * the samples that the code holds. Tolerance: 4 of 255, straight lines between 17 samples of a curved map.
 */
const VIK_8 = [
  [0, 18, 97],
  [3, 74, 133],
  [75, 144, 179],
  [189, 214, 227],
  [231, 198, 178],
  [202, 130, 88],
  [156, 55, 9],
  [89, 0, 8],
];
const VIK_13_COLD_HALF = [
  [0, 18, 97],
  [2, 51, 118],
  [6, 84, 139],
  [48, 125, 166],
  [113, 168, 196],
  [179, 209, 223],
  [236, 229, 224],
];

const lightness = (color: string): number => 116 * Math.cbrt(relativeLuminance(color)) - 16;

describe("the colour of a temperature difference", () => {
  it.each([
    ["eight samples", VIK_8, 7],
    ["the cold half of thirteen", VIK_13_COLD_HALF, 12],
  ])("agrees with %s of the published map", (_name, samples, intervals) => {
    expect(samples.length).toBeGreaterThan(0);
    samples.forEach((published, index) => {
      const ours = vikAt(-1 + (2 * index) / intervals);
      published.forEach((value, channel) => {
        expect(Math.abs((ours[channel] ?? Number.NaN) - value)).toBeLessThanOrEqual(4);
      });
    });
  });

  it("grows darker on both sides of zero, step by step", () => {
    for (const sign of [-1, 1]) {
      for (let k = 0.25; k <= FULL_COLOR_K; k += 0.25) {
        expect(lightness(tempDifferenceColor(sign * k))).toBeLessThan(
          lightness(tempDifferenceColor(sign * (k - 0.25))),
        );
      }
    }
  });

  it("gives equal differences about the same lightness on both sides", () => {
    for (let k = 0.5; k <= FULL_COLOR_K; k += 0.5) {
      const gap = Math.abs(lightness(tempDifferenceColor(k)) - lightness(tempDifferenceColor(-k)));
      expect(gap).toBeLessThan(12);
    }
  });

  it("is blue below zero, brown above, and stays beyond the end of the scale", () => {
    const channels = (color: string) => [1, 3, 5].map((at) => Number.parseInt(color.slice(at, at + 2), 16));
    const [coldRed = 0, , coldBlue = 0] = channels(tempDifferenceColor(-3));
    const [warmRed = 0, , warmBlue = 0] = channels(tempDifferenceColor(3));
    expect(coldBlue).toBeGreaterThan(coldRed);
    expect(warmRed).toBeGreaterThan(warmBlue);
    expect(tempDifferenceColor(-9)).toBe(tempDifferenceColor(-FULL_COLOR_K));
    expect(tempDifferenceColor(9)).toBe(tempDifferenceColor(FULL_COLOR_K));
  });

  it("can be written on at AA everywhere", () => {
    for (let k = -5; k <= 5; k += 0.05) {
      expect(contrastRatio(tempDifferenceColor(k), tempDifferenceInk(k))).toBeGreaterThanOrEqual(4.5);
    }
  });
});

describe("contrast ratio", () => {
  // WCAG 2.2: black on white is 21:1. #767676 on white, 4.54:1, is the customary example of the palest grey that passes AA.
  it("agrees with the known ratios", () => {
    expect(contrastRatio("#000000", "#ffffff")).toBeCloseTo(21, 5);
    expect(Math.abs(contrastRatio("#767676", "#ffffff") - 4.54)).toBeLessThan(0.005);
  });
});
