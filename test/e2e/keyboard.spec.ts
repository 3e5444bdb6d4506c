import { beSignedIn, demoPath, expect, type Page, test } from "./fixtures";

/** Goes on with Tab until the control of that name has the focus; a person would do no more. */
async function tabTo(page: Page, name: RegExp, role?: string): Promise<void> {
  for (let i = 0; i < 80; i++) {
    await page.keyboard.press("Tab");
    const focused = await page.evaluate(() => {
      const element = document.activeElement;
      if (!(element instanceof HTMLElement)) return { name: "", role: "" };
      const labels = (element as HTMLInputElement).labels;
      const text = labels?.[0]?.textContent ?? element.getAttribute("aria-label") ?? element.textContent ?? "";
      const group = element.closest("fieldset fieldset")?.querySelector("legend")?.textContent ?? "";
      return { name: `${group} ${text}`.trim(), role: element.tagName.toLowerCase() };
    });
    if (name.test(focused.name) && (!role || role === focused.role)) return;
  }
  throw new Error(`Tab does not reach ${name}`);
}

test("registers a device with the keyboard alone", async ({ page }) => {
  await beSignedIn(page, "demo");
  await page.goto(demoPath("/devices"));
  await tabTo(page, /^Register a device$/);
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Register a device");
  await tabTo(page, /^Sort of device$/);
  await page.keyboard.type("Heater: compact fan");
  await tabTo(page, /^Show its settings$/);
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { level: 2, name: "compact fan heater, about 900 W" })).toBeVisible();
  await tabTo(page, /^Label$/);
  await page.keyboard.type("K-001");
  await tabTo(page, /^Zone$/);
  await page.keyboard.press("ArrowDown");
  const zone = await page.getByLabel("Zone", { exact: true }).inputValue();
  expect(zone).not.toBe("");
  await tabTo(page, /^high heat Power known by$/);
  await page.keyboard.type("clamp");
  await tabTo(page, /^high heat Current$/);
  await page.keyboard.type("7.5");
  await tabTo(page, /^high heat Selected$/);
  await page.keyboard.press("ControlOrMeta+A");
  await page.keyboard.type("200");
  await expect(page.getByRole("table", { name: "What each setting draws and costs" })).toContainText("900.0");
  await tabTo(page, /^Register the device$/, "button");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Device K-001");
  const sheet = page.getByRole("table", { name: "What each setting draws and costs" });
  // 7.5 A at the demo's 120 V is 900 W; 200 h make 180 kWh.
  await expect(sheet).toContainText("180.0");
});

test("skips to the content, and shows where the focus is", async ({ page }) => {
  await beSignedIn(page, "demo");
  await page.goto(demoPath("/zones"));
  await page.keyboard.press("Tab");
  await expect(page.getByRole("link", { name: "Skip to content" })).toBeFocused();
  const outline = await page
    .getByRole("link", { name: "Skip to content" })
    .evaluate((element) => getComputedStyle(element).outlineStyle);
  expect(outline).not.toBe("none");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("main")).toBeFocused();
});
