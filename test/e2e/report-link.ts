import { beSignedIn, demoPath, expect, type Page } from "./fixtures";

/** Makes a link for a zone of the demo building, by its place in the list, and gives back its address. */
export async function newLink(page: Page, zone: number): Promise<string> {
  await beSignedIn(page, "demo");
  await page.goto(demoPath("/comfort-reports/links"));
  await page.getByLabel("Zone", { exact: true }).selectOption({ index: zone });
  const link = page.getByRole("link", { name: /\/report\// });
  const before = await link.count();
  await page.getByRole("button", { name: "Make the link" }).click();
  await expect(link).toHaveCount(before + 1);
  return (await link.first().textContent()) ?? "";
}
