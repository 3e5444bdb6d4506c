import jsQR from "jsqr";
import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { choiceOfQuery } from "@/app/buildings/[buildingId]/labels/choice";
import { labelPage } from "@/app/buildings/[buildingId]/labels/label-markup";
import { LABEL_SHEETS, labelCorner, labelsASheet } from "@/lib/services/labels/label-sheets";

/** Dots of print at 300 dpi. */
const DOTS_PER_MM = 300 / 25.4;

/** The words in the code at a place of a sheet, as a reader sees it in print. */
async function decoded(
  html: string,
  sheetAt: number,
  sheet: (typeof LABEL_SHEETS)[number],
  place: number,
): Promise<string | undefined> {
  const drawing = html.match(/<svg[^>]*>.*?<\/svg>/gs)?.[sheetAt] ?? "";
  const { xMm, yMm } = labelCorner(sheet, place);
  const area = {
    left: Math.max(0, Math.round(xMm * DOTS_PER_MM)),
    top: Math.max(0, Math.round(yMm * DOTS_PER_MM)),
    width: Math.floor(sheet.labelWidthMm * DOTS_PER_MM) - 1,
    height: Math.floor(sheet.labelHeightMm * DOTS_PER_MM) - 1,
  };
  const width = Math.round(sheet.pageWidthMm * DOTS_PER_MM);
  const whole = await sharp(Buffer.from(drawing), { density: 300 })
    .resize({ width })
    .flatten({ background: "#fff" })
    .png()
    .toBuffer();
  const { data, info } = await sharp(whole).extract(area).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  return jsQR(new Uint8ClampedArray(data), info.width, info.height)?.data;
}

const site = { origin: "https://ledger.example", skip: 0, title: "Labels" };
const labels = (count: number) =>
  Array.from({ length: count }, (_, at) => ({
    head: `H-${String(at + 1).padStart(3, "0")}`,
    lines: ["fan-forced heater, 1500 W", "Zone A & <b>", "Alder Court"],
    path: `/buildings/12/devices/${at + 1}`,
  }));

describe("sheets of labels", () => {
  it.each(LABEL_SHEETS)("stay on the paper: $label", (sheet) => {
    const last = labelCorner(sheet, labelsASheet(sheet) - 1);
    expect(last.xMm + sheet.labelWidthMm).toBeLessThanOrEqual(sheet.pageWidthMm + 0.01);
    expect(last.yMm + sheet.labelHeightMm).toBeLessThanOrEqual(sheet.pageHeightMm + 0.01);
  });

  it.each(LABEL_SHEETS)("are read by a decoder at 300 dpi: $label", async (sheet) => {
    const each = labelsASheet(sheet);
    const html = labelPage(sheet, labels(each + 1), site);
    expect(html.match(/<svg/g)).toHaveLength(2);
    expect(await decoded(html, 0, sheet, 0)).toBe("https://ledger.example/buildings/12/devices/1");
    expect(await decoded(html, 0, sheet, each - 1)).toBe(`https://ledger.example/buildings/12/devices/${each}`);
    expect(await decoded(html, 1, sheet, 0)).toBe(`https://ledger.example/buildings/12/devices/${each + 1}`);
  });

  it("begin at the first label that is left on a sheet, and keep signs as text", async () => {
    const [sheet] = LABEL_SHEETS;
    if (!sheet) throw new Error("no sheet");
    const html = labelPage(sheet, labels(1), { ...site, skip: 4 });
    expect(await decoded(html, 0, sheet, 0)).toBeUndefined();
    expect(await decoded(html, 0, sheet, 4)).toBe("https://ledger.example/buildings/12/devices/1");
    expect(html).toContain(">Zone A &amp; &lt;b&gt;<");
  });

  it("take what the address asks for, and the first of its sort for what is not known", () => {
    expect(choiceOfQuery({ kind: "desks", floor: "2", only: "2-1, 2-2", sheet: "a4-65", first: "3" })).toMatchObject({
      choice: { kind: "desks", floor: "2", only: ["2-1", "2-2"] },
      sheet: { id: "a4-65" },
      skip: 2,
    });
    expect(choiceOfQuery({ kind: "x", sheet: "y", first: "900" })).toMatchObject({
      choice: { kind: "devices", only: [] },
      sheet: { id: "a4-21" },
      skip: 0,
    });
  });
});
