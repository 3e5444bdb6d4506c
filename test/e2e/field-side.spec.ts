import { readFileSync } from "node:fs";
import { readFile } from "node:fs/promises";
import path from "node:path";
import { readXlsx } from "hucre/xlsx";
import jsQR from "jsqr";
import sharp from "sharp";
import { baseUrl } from "../support/servers";
import { beSignedIn, demoPath, expect, type Page, test } from "./fixtures";
import { officeOfDesks } from "./walk-office";

const FIXTURES = path.resolve(import.meta.dirname, "../fixtures");
const day = JSON.parse(readFileSync(path.join(FIXTURES, "plug-log/heater-day.json"), "utf8")) as { energyKwh: number };

/** The number that a cell of a table's row shows. */
async function numberIn(page: Page, table: string, row: RegExp, column: string): Promise<number> {
  const cells = page.getByRole("table", { name: table }).getByRole("row", { name: row }).first();
  return Number((await cells.locator(`[data-label="${column}"]`).textContent())?.replace(/,/g, ""));
}

test("a day of a logger at one second is reduced to its settings, with the working under each", async ({ page }) => {
  await beSignedIn(page, "demo");
  await page.goto(demoPath("/devices/1/plug-logs"));
  await page.getByLabel("File", { exact: true }).setInputFiles(path.join(FIXTURES, "plug-log/heater-day.csv.gz"));
  await page.getByRole("button", { name: "Bring in" }).click();
  await page.waitForURL(/plug-logs\/\d+$/);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(/^Plug log of /);
  const levels = page.getByRole("table", { name: "Levels of power" });
  const together = Number((await levels.locator("tfoot [data-label=Energy]").textContent())?.replace(/,/g, ""));
  expect(Math.abs(together / day.energyKwh - 1)).toBeLessThan(0.001);
  expect(await numberIn(page, "Levels of power", /1,45\d\.\d/, "Longest run")).toBeCloseTo(3.5, 2);
  await levels
    .getByText(/^Working of /)
    .last()
    .click();
  await expect(page.getByText("time for which it was selected").last()).toBeVisible();
  await expect(page.getByText("It ran 3.5 h outside occupied hours.", { exact: false })).toBeVisible();

  await page.getByRole("button", { name: "Work out the season" }).click();
  await expect(page.getByText("fewer than 5 say nothing of it", { exact: false })).toBeVisible();
  await page.getByRole("button", { name: "Reviewed: delete the raw readings" }).click();
  await expect(page.getByText("The raw readings are deleted, the figures stay.")).toBeVisible();
  await page.getByRole("button", { name: "Take this log out of the record" }).click();
  await page.waitForURL(/plug-logs$/);
  await expect(page.getByText("No log yet.", { exact: false })).toBeVisible();
});

test("what a logger's file does not say is asked, and what was answered stands", async ({ page }) => {
  await beSignedIn(page, "demo");
  await page.goto(demoPath("/devices/1/plug-logs"));
  const bare = {
    name: "bare.csv",
    mimeType: "text/csv",
    buffer: Buffer.from("08/05/2025 10:00:00;5\n08/05/2025 10:00:01;6\n"),
  };
  await page.getByLabel("File", { exact: true }).setInputFiles(bare);
  await page.getByRole("button", { name: "Bring in" }).click();
  await expect(page.getByText("The file has no headings", { exact: false })).toBeVisible();
  await page.getByLabel("File", { exact: true }).setInputFiles(bare);
  await page.getByLabel(/^Unit of its numbers/).selectOption("W");
  await page.getByRole("button", { name: "Bring in" }).click();
  await expect(page.getByText("can be read in two ways", { exact: false })).toBeVisible();
  await expect(page.getByLabel(/^Unit of its numbers/)).toHaveValue("w");
});

test("a photo comes in without its metadata, and what is none or too large is refused in words", async ({ page }) => {
  await beSignedIn(page, "demo");
  await page.goto(demoPath("/devices/1/photos"));
  const photo = page.getByLabel("Photo", { exact: true });
  const add = page.getByRole("button", { name: "Add the photo" });
  const buffer = await sharp({ create: { width: 4000, height: 3000, channels: 3, background: "#9a9" } })
    .withExif({ IFD0: { Make: "Invented Camera" } })
    .jpeg()
    .toBuffer();
  await photo.setInputFiles({ name: "label.jpg", mimeType: "image/jpeg", buffer });
  await page.getByLabel(/^What it shows/).fill("Its label");
  await add.click();
  const picture = page.getByRole("img", { name: "Its label" });
  await expect(picture).toBeVisible();
  const kept = await page.request.get(new URL((await picture.getAttribute("src")) ?? "", page.url()).href);
  const metadata = await sharp(await kept.body()).metadata();
  expect([metadata.width, metadata.height, metadata.exif]).toEqual([2000, 1500, undefined]);

  await photo.setInputFiles({ name: "notes.jpg", mimeType: "image/jpeg", buffer: Buffer.from("no picture at all") });
  await add.click();
  await expect(page.getByText("This is no photo that can be read.", { exact: false })).toBeVisible();
  await photo.setInputFiles({ name: "huge.jpg", mimeType: "image/jpeg", buffer: Buffer.alloc(26_000_000) });
  await add.click();
  await expect(page.getByText("The file is over 25 MB", { exact: false }).first()).toBeVisible();
  // Past the page's own check, as without script: the server says the same.
  const origin = baseUrl("demo");
  const answer = await page.request.post(demoPath("/devices/1/photos/upload"), {
    headers: { origin },
    multipart: { photo: { name: "huge.jpg", mimeType: "image/jpeg", buffer: Buffer.alloc(200_000_000) } },
    maxRedirects: 0,
  });
  expect(answer.status()).toBe(303);
  expect(answer.headers().location).toContain("over+25+MB");
  await page.goto(demoPath("/devices/1/photos"));
  await page.getByRole("button", { name: "Take out" }).click();
  await expect(page.getByText("No photo yet.")).toBeVisible();
});

test("printed labels are read by a decoder and lead where they say", async ({ page }) => {
  await beSignedIn(page, "demo");
  await page.goto(demoPath("/labels/sheet?kind=devices&sheet=a4-21"));
  await page.emulateMedia({ media: "print" });
  const size = { width: Math.round((210 / 25.4) * 96), height: Math.round((297 / 25.4) * 96) };
  await page.setViewportSize(size);
  const printed = await page.screenshot({ clip: { x: 0, y: 0, ...size }, scale: "css" });
  // The second label of the first row: 63.5 mm wide, 38.1 mm high, 2.5 mm from the first.
  const px = (mm: number): number => Math.round((mm / 25.4) * 96);
  const area = { left: px(7.25 + 66), top: px(15.15), width: px(63.5), height: px(38.1) };
  const { data, info } = await sharp(printed).extract(area).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  const found = jsQR(new Uint8ClampedArray(data), info.width, info.height)?.data ?? "";
  expect(found).toMatch(new RegExp(`^${baseUrl("demo")}/buildings/1/devices/\\d+$`));
  const label = await page.locator("svg").first().locator("text[font-weight]").nth(1).textContent();
  await page.goto(found);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(`Device ${label}`);
});

test("a workbook comes in by its columns, and the register goes out whole", async ({ page }) => {
  const address = await officeOfDesks(page, "Registered office", 2);
  await page.goto(`${address}/devices/bring-in`);
  const text = "Tag,Type,Watts,Room\nX-901,Oil filled radiator,1500,a\nX-902,Kettle,2000,b\nX-903,Desk fan,,c\n";
  await page
    .getByLabel("Spreadsheet")
    .setInputFiles({ name: "old register.csv", mimeType: "text/csv", buffer: Buffer.from(text) });
  await page.getByRole("button", { name: "Look at its columns" }).click();
  await expect(page.getByText("2 rows can be taken, 1 cannot", { exact: false })).toBeVisible();
  await page.getByLabel(/^Zone where none is named/).selectOption("");
  await page.getByRole("button", { name: "Read the rows so" }).click();
  await expect(page.getByText("0 rows can be taken, 3 cannot", { exact: false })).toBeVisible();
  await page.getByLabel(/^Zone where none is named/).selectOption("2-14");
  await page.getByRole("button", { name: "Read the rows so" }).click();
  await expect(page.getByText("2 rows can be taken, 1 cannot", { exact: false })).toBeVisible();
  await page.getByRole("button", { name: "Register 2 devices" }).click();
  await page.waitForURL(/imports\/\d+$/);
  await expect(page.getByText('no class was chosen for "Kettle"', { exact: false })).toBeVisible();

  await page.goto(`${address}/devices/bring-in`);
  const download = page.waitForEvent("download");
  await page.getByRole("link", { name: "Everything as a workbook (XLSX)" }).click();
  const bytes = await readFile(await (await download).path());
  const [devices] = (await readXlsx(bytes)).sheets;
  expect(devices?.rows.map((row) => row[0])).toEqual(expect.arrayContaining(["label", "X-901", "X-903"]));
});

test.describe("without script", () => {
  test.use({ javaScriptEnabled: false });

  test("a plug log and a photo come in all the same, and are taken out again", async ({ page }) => {
    await beSignedIn(page, "demo");
    await page.goto(demoPath("/devices/2/plug-logs"));
    const text = `time,W\n${Array.from({ length: 60 }, (_, minute) => `2026-07-01 10:${String(minute).padStart(2, "0")},${minute < 30 ? 1400 : 0}`).join("\n")}\n`;
    await page
      .getByLabel("File", { exact: true })
      .setInputFiles({ name: "hour.csv", mimeType: "text/csv", buffer: Buffer.from(text) });
    await page.getByRole("button", { name: "Bring in" }).click();
    await expect(page.getByText("0.70 kWh in 1.0 h, 0.5 h of them on", { exact: false })).toBeVisible();
    await page.getByLabel("From").fill("2026-09-01");
    await page.getByLabel("To, this day included").fill("2026-06-01");
    await page.getByRole("button", { name: "Work out the season" }).click();
    await expect(page.getByText("The season ends before it begins", { exact: false }).first()).toBeVisible();
    await expect(page.getByLabel("From")).toHaveValue("2026-09-01");
    await page.getByRole("button", { name: "Take this log out of the record" }).click();
    await expect(page.getByText("No log yet.", { exact: false })).toBeVisible();

    await page.goto(demoPath("/devices/2/photos"));
    const buffer = await sharp({ create: { width: 40, height: 30, channels: 3, background: "#9a9" } })
      .png()
      .toBuffer();
    await page.getByLabel("Photo", { exact: true }).setInputFiles({ name: "a.png", mimeType: "image/png", buffer });
    await page.getByRole("button", { name: "Add the photo" }).click();
    await page.getByRole("button", { name: "Take out" }).click();
    await expect(page.getByText("No photo yet.")).toBeVisible();
  });
});
