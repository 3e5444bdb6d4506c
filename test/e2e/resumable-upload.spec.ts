import { writeFileSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import AxeBuilder from "@axe-core/playwright";
import { baseUrl } from "../support/servers";
import { test as base, beSignedIn, expect, type Page, watchConsole } from "./fixtures";
import { CHICAGO_OFFICE, fillFields } from "./set-up-building";

/** A dropped line is an error on the console by the browser's own doing; any other error fails the test. */
const test = base.extend({
  consoleErrors: async ({ page }, use) => {
    const errors: string[] = [];
    watchConsole(page, errors);
    await use(errors);
    expect(errors.filter((error) => !error.includes("net::ERR_"))).toEqual([]);
  },
});

const ROWS = 330_000;
let folder: string;
let file: string;
test.beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), "resumable-"));
  file = path.join(folder, "floor-2 minutes.csv");
  const lines = Array.from(
    { length: ROWS },
    (_, i) =>
      `${new Date(Date.UTC(2025, 0, 1) + i * 60_000).toISOString()},${(70 + (i % 40) / 10).toFixed(1)},${i % 100}`,
  );
  writeFileSync(file, `Timestamp,VAV-2-14 ZN-T (°F),VAV-2-14 DMPR (%)\n${lines.join("\n")}\n`);
});
test.afterAll(() => rm(folder, { recursive: true }));

const isPart = (request: { method(): string }) => request.method() === "PATCH";

async function newBuilding(page: Page, name: string): Promise<string> {
  await beSignedIn(page, "empty");
  await page.goto(`${baseUrl("empty")}/buildings/new`);
  await fillFields(page, { ...CHICAGO_OFFICE, Name: name });
  await page.getByRole("button", { name: "Set up the building" }).click();
  await page.waitForURL(/\/buildings\/\d+\/imports$/);
  return page.url();
}

async function choose(page: Page): Promise<void> {
  await page.getByLabel("Files", { exact: true }).setInputFiles(file);
  await page.getByRole("button", { name: "Bring in" }).click();
}

test("a file in parts survives a dropped line, a pause and a page that is loaded again", async ({ page }) => {
  test.setTimeout(300_000);
  const address = await newBuilding(page, "Resumed office");
  const parts = page.getByRole("list", { name: "Files on their way" });
  const offsets: string[] = [];
  let isLineUp = true;
  await page.route("**/imports/uploads/*", async (route) => {
    const request = route.request();
    if (!isPart(request)) return route.continue();
    offsets.push((await request.headerValue("upload-offset")) ?? "");
    if (!isLineUp) return route.abort("connectionreset");
    // After the first part the line stays down until the test has looked.
    isLineUp = offsets.length > 1;
    return route.continue();
  });

  await choose(page);
  await expect(parts).toContainText("The line dropped. Tried again in", { timeout: 120_000 });
  await expect(parts).toContainText(/of \d+\.\d.MB/);
  expect((await new AxeBuilder({ page }).setLegacyMode().analyze()).violations.map(({ id }) => id)).toEqual([]);
  await page.setViewportSize({ width: 390, height: 844 });
  await page.getByRole("button", { name: "Pause floor-2 minutes.csv" }).click();
  await expect(parts).toContainText("paused");
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
  await page.setViewportSize({ width: 1440, height: 900 });

  page.once("dialog", (dialog) => dialog.accept());
  await page.reload();
  await expect(page.getByRole("heading", { name: "Not finished" })).toBeVisible();
  await expect(page.getByText(/^8\.0.MB of \d+\.\d.MB, begun by/)).toBeVisible();
  isLineUp = true;
  offsets.length = 1;
  await choose(page);
  await page.waitForURL(/outcome=/, { timeout: 90_000, waitUntil: "commit" });
  expect(offsets[1], "it went on from where it was").toBe("8000000");
  await expect(page.getByRole("link", { name: "floor-2 minutes.csv" }).first()).toBeVisible();
  await expect(page.getByRole("heading", { name: "Not finished" })).toBeHidden();

  // The file that was put together is the one that was sent.
  await page.goto(address);
  await choose(page);
  await page.waitForURL(/outcome=/, { timeout: 90_000, waitUntil: "commit" });
  await expect(page.getByRole("status").filter({ hasText: "floor-2 minutes.csv" }).first()).toBeVisible();
  await page.goto(address);
  await expect(page.getByRole("link", { name: "floor-2 minutes.csv" })).toHaveCount(1);
});

test("an unfinished upload can be discarded by keyboard", async ({ page }) => {
  await newBuilding(page, "Discarding office");
  await page.route("**/imports/uploads/*", (route) => (isPart(route.request()) ? route.abort() : route.continue()));
  await choose(page);
  const discard = page.getByRole("button", { name: "Discard floor-2 minutes.csv" });
  await discard.focus();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("list", { name: "Files on their way" })).toBeHidden();
  await page.reload();
  await expect(page.getByRole("button", { name: "Bring in" })).toBeVisible();
  await expect(page.getByRole("heading", { name: "Not finished" })).toBeHidden();
});
