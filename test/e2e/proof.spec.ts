import { readFileSync } from "node:fs";
import path from "node:path";
import { CHANGED_ZONES, RAISE_K, type SecondYear, UNTOUCHED_ZONE, WINDOWS } from "../support/second-year";
import { SERVERS } from "../support/servers";
import { accessibilityFaults } from "./accessibility-faults";
import { bringIn } from "./bring-in";
import { beSignedIn, expect, type Page, proofPath, settled, test } from "./fixtures";

test.use({ actionTimeout: 15_000 });

const files = SERVERS.proof.dataFolder;
const fileOf = (name: string): string => path.join(files, name);

async function decide(page: Page, decision: string, status: string): Promise<void> {
  await page.getByLabel("Decision").selectOption({ label: decision });
  await page.getByRole("button", { name: "Enter the decision" }).click();
  await expect(page.getByRole("heading", { name: `Status: ${status}` })).toBeVisible({ timeout: 60_000 });
}

/** Sets the windows of a proposal's verification and works it out. */
async function verify(page: Page, proposal: string): Promise<void> {
  await page.goto(`${proposal}/verification`);
  await page.getByLabel("Before, from").fill(WINDOWS.before[0]);
  await page.getByLabel("to", { exact: true }).first().fill(WINDOWS.before[1]);
  await page.getByLabel("After, from").fill(WINDOWS.after[0]);
  await page.getByLabel("to", { exact: true }).last().fill(WINDOWS.after[1]);
  await page.getByRole("button", { name: "Set the windows" }).click();
  await page.getByRole("button", { name: "Work out what the data say" }).click();
  await expect(page.getByRole("heading", { name: /^Found on/ })).toBeVisible({ timeout: 60_000 });
}

/** Ends of "(90 % interval 1.94 to 1.98)", with the minus sign that pages write. */
function intervalIn(text: string): [number, number] {
  const found = /interval (\u2212?[\d.,]+) to (\u2212?[\d.,]+)\)/.exec(text);
  if (!found) throw new Error(`no interval in "${text}"`);
  const [low, high] = [found[1], found[2]].map((each) => Number((each ?? "").replace("\u2212", "-").replace(",", "")));
  return [low ?? Number.NaN, high ?? Number.NaN];
}

test("from a zone's diagnosis to a change that the next year's trends prove", async ({ page }) => {
  test.setTimeout(240_000);
  await beSignedIn(page, "proof");

  await test.step("a zone's diagnosis leads to a proposal for it and its like", async () => {
    await page.goto(proofPath("/zones"));
    await page.getByRole("link", { name: "1-05" }).click();
    await expect(page.getByRole("heading", { name: /^Zone 1-05/ })).toBeVisible();
    await settled(page);
    await page.getByRole("link", { name: "Propose a change" }).click();
    await expect(page.getByRole("heading", { name: "New proposal" })).toBeVisible();
    await settled(page);
    await page.getByLabel("Name", { exact: true }).fill("Setpoints two kelvin up");
    for (const code of CHANGED_ZONES)
      await page.getByRole("checkbox", { name: `Cooling setpoint, zone ${code}` }).check();
    await page.getByLabel("proposed, variant 3").check();
    await page.getByRole("slider", { name: /^Cooling setpoint, variant 3/ }).fill(String(RAISE_K));
    await page.getByRole("button", { name: "Save as a draft" }).click();
    await expect(page.getByRole("heading", { name: "Status: draft" })).toBeVisible({ timeout: 60_000 });
  });
  const proposal = page.url();

  await test.step("it is issued, its document opens, and it is approved and put in force", async () => {
    await settled(page);
    await decide(page, "Submit: freezes the figures", "submitted");
    await page.getByRole("link", { name: "Business case" }).click();
    await page.getByRole("link", { name: "Read and print, A4" }).click();
    await page.waitForURL(/\/case\/document/);
    await expect(page.getByRole("heading", { level: 2, name: "Finance" })).toBeVisible();
    await page.goto(proposal);
    await decide(page, "Approve", "approved");
    await decide(page, "Put in force", "in force");
  });

  await test.step("the year after comes in as an export of trends", async () => {
    await page.goto(proofPath("/imports"));
    await bringIn(page, "Trend logs (CSV, or a zip of them)", fileOf("later-trends.csv"));
    await page.getByRole("link", { name: "Map the points" }).click();
    await page.getByRole("button", { name: "Confirm and import" }).click();
    await page.waitForURL(/\/imports$/, { timeout: 30_000 });
    await expect(page.getByRole("row", { name: /later-trends\.csv/ }).first()).toContainText("imported", {
      timeout: 60_000,
    });
  });

  await test.step("and so do its complaints", async () => {
    await page.goto(proofPath("/comfort-reports/past"));
    await page.getByLabel("CSV file").setInputFiles(fileOf("later-complaints.csv"));
    await page.getByRole("button", { name: "Read the table" }).click();
    await page.getByRole("button", { name: /^Take in \d+ reports$/ }).click();
    await expect(page.getByText(/^\d+ reports taken in$/)).toBeVisible();
  });

  await test.step("the changes are found in the trends and confirmed as the proposal's", async () => {
    await page.goto(proofPath("/proposals/changes"));
    for (const code of CHANGED_ZONES) {
      const change = page.getByRole("group", { name: new RegExp(`^Zone ${code}: cooling setpoint from .* May 2026`) });
      await change.getByLabel("Was it changed").selectOption("confirmed");
      await change.getByLabel("By the proposal").selectOption({ label: "Setpoints two kelvin up" });
      await page.locator("form", { has: change }).getByRole("button", { name: "Enter" }).click();
      await expect(page.getByRole("row", { name: new RegExp(`^Zone ${code}: .*confirmed`) })).toBeVisible();
    }
  });

  await test.step("the stop rules hold since the change", async () => {
    await page.goto(proposal);
    const rules = page.getByRole("table", { name: "Limits of the trial and the highest since it began" });
    await expect(rules.getByRole("row", { name: /^A zone's air/ })).toContainText("holds");
  });

  await test.step("the proof holds what was planted, and says so with its working", async () => {
    await verify(page, proposal);
    await expect(page.getByText("Shown: the effect stands out of the noise.")).toBeVisible();
    const planted: SecondYear["planted"] = JSON.parse(readFileSync(fileOf("planted.json"), "utf8"));
    for (const [quantity, truth] of [
      // The building reads Fahrenheit.
      [/^Zone air of the proposal/, 1.8 * planted.riseK],
      [/^Avoided electricity/, planted.kwhPerDay],
    ] as const) {
      const printed = Number(truth.toPrecision(3));
      const row = page.getByRole("row", { name: quantity });
      await expect(row).toContainText("shown");
      const [low, high] = intervalIn((await row.textContent()) ?? "");
      expect(low, `${quantity} from below`).toBeLessThanOrEqual(printed);
      expect(high, `${quantity} from above`).toBeGreaterThanOrEqual(printed);
    }
    const worth = page.getByRole("row", { name: /^Worth of it/ });
    await expect(worth).toContainText(/\$[\d,.]+–[\d,.]+/);
    expect(await accessibilityFaults(page, page.url())).toEqual([]);
    await page.setViewportSize({ width: 1440, height: 900 });
  });

  await test.step("the cost of overcooling is verified by it", async () => {
    await page.goto(proofPath());
    await expect(page.getByText("tier 4, verified by “Setpoints two kelvin up”")).toBeVisible();
    await expect(page.getByText(/^Tier 2, measured zones/)).toBeVisible();
  });

  await test.step("a zone that nobody touched is no success, though the building's meter reads less", async () => {
    await page.goto(proofPath("/zones"));
    await page.getByRole("link", { name: UNTOUCHED_ZONE }).click();
    await page.getByRole("link", { name: "Propose a change" }).click();
    await page.getByLabel("Name", { exact: true }).fill("A sound zone");
    await page.getByRole("button", { name: "Save as a draft" }).click();
    await expect(page.getByRole("heading", { name: "Status: draft" })).toBeVisible({ timeout: 60_000 });
    const other = page.url();
    await decide(page, "Submit: freezes the figures", "submitted");
    await verify(page, other);
    await expect(page.getByText(/^(Not shown|Too early): /)).toBeVisible();
    await expect(page.getByRole("row", { name: /^Zone air of the proposal/ })).toContainText(/not shown|too early/);
  });
});
