import type { Page } from "@playwright/test";

type Files = Parameters<ReturnType<Page["getByLabel"]>["setInputFiles"]>[0];

/** Sends files by the form of the imports page and waits for what is said of them. */
export async function bringIn(page: Page, kind: string, files: Files): Promise<void> {
  await page.getByRole("navigation", { name: "Building" }).getByRole("link", { name: "Imports" }).click();
  await page.getByLabel("What the files hold").selectOption({ label: kind });
  await page.getByLabel("Files", { exact: true }).setInputFiles(files);
  await page.getByRole("button", { name: "Bring in" }).click();
  await page.waitForURL(/outcome=/);
}

/** Follows a link of the building's navigation. */
export const go = (page: Page, name: string) =>
  page.getByRole("navigation", { name: "Building" }).getByRole("link", { name, exact: true }).click();
