import AxeBuilder from "@axe-core/playwright";
import type { Page } from "@playwright/test";

/**
 * Both widths and both schemes. Structure depends on the width alone and colour on the scheme, so every rule is applied
 * in two of the views and contrast alone in the other two.
 */
const VIEWS = [
  { width: 1440, scheme: "light", rules: "all" },
  { width: 1440, scheme: "dark", rules: "contrast" },
  { width: 390, scheme: "light", rules: "contrast" },
  { width: 390, scheme: "dark", rules: "all" },
] as const;

/** What axe finds of a page in every view, and whether it scrolls sideways; a sentence each. */
export async function accessibilityFaults(page: Page, address: string): Promise<string[]> {
  await page.emulateMedia({ reducedMotion: "reduce" });
  const response = await page.goto(address);
  if (response?.status() !== 200) return [`answered ${response?.status()}`];
  await openDisclosures(page);
  const faults: string[] = [];
  for (const { width, scheme, rules } of VIEWS) {
    await page.setViewportSize({ width, height: 900 });
    await page.emulateMedia({ colorScheme: scheme });
    const axe = new AxeBuilder({ page }).options({ resultTypes: ["violations"] }).setLegacyMode();
    const { violations } = await (rules === "contrast" ? axe.withRules(["color-contrast"]) : axe).analyze();
    const view = `${width} px, ${scheme}`;
    for (const { id, nodes } of violations)
      faults.push(`${view}: ${id} at ${nodes.slice(0, 3).map((node) => node.target.join(" "))}`);
    const content = await page.evaluate(() => document.documentElement.scrollWidth);
    if (content > width) faults.push(`${view}: ${content} px of content`);
  }
  return faults;
}

/** Opens what stands closed, but of the rows of one table only the first: the others are made alike. */
async function openDisclosures(page: Page): Promise<void> {
  await page.evaluate(() => {
    const seen = new Set<Element>();
    for (const details of document.querySelectorAll("details")) {
      const table = details.closest("table");
      if (table && seen.has(table)) continue;
      if (table) seen.add(table);
      details.open = true;
    }
  });
}
