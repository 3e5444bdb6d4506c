import AxeBuilder from "@axe-core/playwright";
import { baseUrl } from "../support/servers";
import { FACILITIES_PAGES } from "./demo-pages";
import { beSignedIn, demoPath, expect, type Page, test } from "./fixtures";

const VIEWS = [
  { width: 1440, scheme: "light" },
  { width: 1440, scheme: "dark" },
  { width: 390, scheme: "light" },
  { width: 390, scheme: "dark" },
] as const;

for (const { width, scheme } of VIEWS) {
  test(`has no accessibility violation on any page at ${width} px, ${scheme}`, async ({ page }) => {
    test.setTimeout(240_000);
    await page.setViewportSize({ width, height: 900 });
    await page.emulateMedia({ colorScheme: scheme, reducedMotion: "reduce" });
    const faults: string[] = [...(await faultsOf(page, `${baseUrl("demo")}/sign-in`, width))];
    await beSignedIn(page, "demo");
    for (const address of FACILITIES_PAGES) faults.push(...(await faultsOf(page, address, width)));
    for (const address of await publicPages(page)) faults.push(...(await faultsOf(page, address, width)));
    expect(faults).toEqual([]);
  });
}

/** The form behind an occupant's link, its thanks, and a link that is not in use. */
async function publicPages(page: Page): Promise<string[]> {
  await page.goto(demoPath("/comfort-reports/links"));
  const links = page.getByRole("link", { name: /\/report\// });
  if ((await links.count()) === 0) {
    await page.getByLabel("Zone", { exact: true }).selectOption({ index: 1 });
    await page.getByRole("button", { name: "Make the link" }).click();
  }
  const address = (await links.first().textContent()) ?? "";
  return [address, `${address}/thanks`, `${baseUrl("demo")}/report/made-up-token`];
}

async function faultsOf(page: Page, address: string, width: number): Promise<string[]> {
  const response = await page.goto(address);
  const path = new URL(address).pathname;
  const status = response?.status() ?? 0;
  if (status !== 200) return [`${path}: answered ${status}`];
  for (const summary of await page.locator("details:not([open]) > summary").all())
    if (await summary.isVisible()) await summary.evaluate((element) => element.parentElement?.setAttribute("open", ""));
  const { violations } = await new AxeBuilder({ page }).analyze();
  const found = violations.map(
    ({ id, nodes }) =>
      `${path}: ${id} at ${nodes
        .map((node) => node.target.join(" "))
        .slice(0, 3)
        .join("; ")}`,
  );
  const content = await page.evaluate(() => document.documentElement.scrollWidth);
  return content > width ? [...found, `${path}: scrolls sideways (${content} px of content)`] : found;
}
