import { baseUrl } from "../support/servers";
import { accessibilityFaults } from "./accessibility-faults";
import { FACILITIES_PAGES } from "./demo-pages";
import { beSignedIn, demoPath, expect, test } from "./fixtures";

for (const address of FACILITIES_PAGES) {
  const { pathname, search } = new URL(address);
  test(`has no accessibility violation, and does not scroll sideways: ${pathname}${search}`, async ({ page }) => {
    await beSignedIn(page, "demo");
    expect(await accessibilityFaults(page, address)).toEqual([]);
  });
}

test("has no accessibility violation on the pages of those who are not signed in", async ({ page, browser }) => {
  await beSignedIn(page, "demo");
  await page.goto(demoPath("/comfort-reports/links"));
  await page.getByLabel("Zone", { exact: true }).selectOption({ index: 1 });
  await page.getByRole("button", { name: "Make the link" }).click();
  const link =
    (await page
      .getByRole("link", { name: /\/report\// })
      .first()
      .textContent()) ?? "";
  const context = await browser.newContext();
  const occupant = await context.newPage();
  const pages = [
    link,
    `${link}?language=fr`,
    `${baseUrl("demo")}/report/follow/made-up`,
    `${baseUrl("demo")}/report/made-up-token`,
    `${baseUrl("demo")}/sign-in`,
  ];
  for (const address of pages) expect(await accessibilityFaults(occupant, address)).toEqual([]);
  await context.close();
});
