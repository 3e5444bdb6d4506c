import { beSignedIn, demoPath, expect, type Page, settled, testAsItComes as test } from "./fixtures";
import { printedNumber, tableTotals } from "./printed";

/** Saves the settings, and waits until they are. */
async function save(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Save" }).click();
  await expect(page.getByText("Saved", { exact: true })).toBeVisible();
}

const STANDING = { name: "Of when the figures are" };
const BY_COMPONENT = { name: /^Cost of overcooling by component/ };

test("shows the last result with its time while the next is worked out, and then the next by itself", async ({
  page,
}) => {
  await beSignedIn(page, "demo");
  await page.goto(demoPath());
  await settled(page);
  const total = async () =>
    printedNumber((await tableTotals(page.getByRole("table", BY_COMPONENT)))["At stated values"] ?? "");
  const before = await total();
  await page.goto(demoPath("/settings"));
  const price = page.getByLabel("Electricity price", { exact: true });
  const was = await price.inputValue();
  await price.fill(String(2 * Number(was)));
  await save(page);
  await page.goto(demoPath());
  const standing = page.getByRole("region", STANDING);
  await expect(standing).toContainText(/Worked out \d+ \w+ \d{4}, \d\d:\d\d, before a change of the settings\./);
  expect(await total(), "the last result").toBe(before);
  await settled(page);
  expect(await total(), "the next").toBeGreaterThan(1.2 * before);
  await page.goto(demoPath("/settings"));
  await price.fill(was);
  await save(page);
});
