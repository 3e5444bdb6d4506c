import path from "node:path";
import { RESULTS } from "../support/servers";
import { beSignedIn, demoPath, expect, type Page, test } from "./fixtures";

/** The README's pictures: taken from the demo building before other tests add to it. */
const picture = (page: Page, name: string) =>
  page.screenshot({ path: path.join(RESULTS, "figures", `${name}.png`), animations: "disabled" });

test.beforeEach(async ({ page }) => {
  await page.emulateMedia({ colorScheme: "light", reducedMotion: "reduce" });
  await beSignedIn(page, "demo");
});

test("takes the pictures of the overview, a zone and a device", async ({ page }) => {
  await page.goto(demoPath());
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("What overcooling costs");
  await picture(page, "overview");
  await page
    .getByRole("table", { name: /^Cost of overcooling by zone/ })
    .getByRole("link")
    .first()
    .click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(/^Zone /);
  await page.getByRole("img", { name: /zone air temperature against its cooling/ }).scrollIntoViewIfNeeded();
  await picture(page, "zone");
  await page.goto(demoPath("/devices"));
  const heater = page.getByRole("row").filter({ hasText: "fan-forced heater (ceramic or wire), 1500 W" }).first();
  await heater.getByRole("link").first().click();
  const sheet = page.getByRole("region", { name: "Settings side by side" });
  await expect(sheet.getByRole("table").first()).toBeVisible();
  await sheet.evaluate((element) => element.scrollIntoView({ block: "end" }));
  await picture(page, "device");
});

test("takes the picture of the business case", async ({ page }) => {
  await page.setViewportSize({ width: 860, height: 1120 });
  await page.goto(demoPath("/proposals/1/case/document"));
  await expect(page.getByRole("heading", { level: 2, name: "Summary" })).toBeVisible();
  await page.evaluate(() => document.fonts.ready);
  await picture(page, "business-case");
});

test("takes the picture of the occupant's form", async ({ page, browser }) => {
  await page.goto(demoPath("/comfort-reports/links"));
  await page.getByLabel("Zone", { exact: true }).selectOption({ index: 1 });
  await page.getByRole("button", { name: "Make the link" }).click();
  const address =
    (await page
      .getByRole("link", { name: /\/report\// })
      .first()
      .textContent()) ?? "";
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, colorScheme: "light" });
  const occupant = await context.newPage();
  await occupant.goto(address);
  await expect(occupant.getByLabel("Cold", { exact: true })).toBeVisible();
  await picture(occupant, "report-form");
  await context.close();
});
