import { beSignedIn, demoPath, expect, settled, test } from "./fixtures";

/** Longest that a move of a slider may take until its figures stand on the page [ms]. */
const LIMIT_MS = 100;

test.beforeEach(async ({ page }) => {
  await beSignedIn(page, "demo");
});

test("a proposal goes from the diagnosis to approved, with its figures frozen and a named check", async ({ page }) => {
  // The first page of a fresh building waits for its whole analysis.
  test.setTimeout(300_000);
  await page.goto(demoPath("/proposals/new"));
  await page.getByLabel("Name", { exact: true }).fill("Warmer second floor");
  await page.getByRole("button", { name: "Save as a draft" }).click();
  await expect(page.getByRole("heading", { name: "Status: draft" })).toBeVisible({ timeout: 60_000 });
  await settled(page);
  await expect(page.getByText("A minimum airflow goes down")).toBeVisible();

  await page.getByLabel("Decision").selectOption("submitted");
  await page.getByRole("button", { name: "Enter the decision" }).click();
  await expect(page.getByRole("heading", { name: /^As issued on/ })).toBeVisible({ timeout: 60_000 });

  await page.getByLabel("Decision").selectOption("approved");
  await page.getByRole("button", { name: "Enter the decision" }).click();
  await expect(page.getByText(/a named engineer must check/)).toBeVisible();

  await page.getByLabel("Engineer").fill("A. Sample, PE");
  await page.getByLabel("Checked on").fill("2026-11-20");
  await page.getByLabel("By which code, to which rates").fill("Rates of the local code, zone by zone.");
  await page.getByRole("button", { name: "Enter the check" }).click();
  await expect(page.getByText(/Ventilation checked by A. Sample, PE/)).toBeVisible();

  await page.getByLabel("Decision").selectOption("approved");
  await page.getByRole("button", { name: "Enter the decision" }).click();
  await expect(page.getByRole("heading", { name: "Status: approved" })).toBeVisible();

  // Nothing was changed on site between these months: whatever is found, it must not be called a success.
  await page.getByRole("link", { name: "Verification" }).click();
  const windows = { "Before, from": "2026-06-01", "After, from": "2026-07-01" };
  for (const [label, date] of Object.entries(windows)) await page.getByLabel(label).fill(date);
  await page.getByLabel("to", { exact: true }).first().fill("2026-06-30");
  await page.getByLabel("to", { exact: true }).last().fill("2026-07-31");
  await page.getByRole("button", { name: "Set the windows" }).click();
  await page.getByRole("button", { name: "Work out what the data say" }).click();
  await expect(page.getByRole("heading", { name: /^Found on/ })).toBeVisible({ timeout: 60_000 });
  await expect(page.getByText(/^(Not shown|Too early|Worse): /)).toBeVisible();
  await expect(page.getByRole("cell", { name: /days of like weather/ }).first()).toBeVisible();
});

test("a slider's figures follow it without asking the server", async ({ page }) => {
  await page.goto(demoPath("/proposals/new"));
  const picture = page.locator("[data-live-picture]");
  await expect(picture).toBeVisible();
  const before = await picture.getAttribute("data-live-picture");
  const asked: string[] = [];
  // The navigation's own looking ahead is not asked for by the slider.
  page.on("request", (request) => {
    if (!("next-router-prefetch" in request.headers())) asked.push(request.url());
  });
  // Moves of one slider, each until the picture has changed and is drawn; the middle one counts, not the first.
  const times = await page.evaluate(async () => {
    const slider = document.querySelector<HTMLInputElement>('input[name="amount-1-cooling-setpoint"]');
    const shown = document.querySelector("[data-live-picture]");
    if (!slider || !shown) throw new Error("the page has no slider or no picture");
    const taken: number[] = [];
    for (let k = 0; k < 9; k++) {
      const from = performance.now();
      const present = shown.getAttribute("data-live-picture");
      slider.value = String(1.1 + 0.1 * k);
      slider.dispatchEvent(new Event("input", { bubbles: true }));
      while (shown.getAttribute("data-live-picture") === present) await new Promise((done) => setTimeout(done));
      taken.push(performance.now() - from);
    }
    return taken;
  });
  const middle = times.toSorted((a, b) => a - b)[4] ?? Number.NaN;
  test.info().annotations.push({ type: "slider", description: `${middle.toFixed(0)} ms, ${LIMIT_MS} at most` });
  expect(await picture.getAttribute("data-live-picture")).not.toBe(before);
  expect(asked).toEqual([]);
});

test("a setpoint that moved is found in the trends, confirmed and kept in the log", async ({ page }) => {
  await page.goto(demoPath("/proposals/changes"));
  const change = page.getByRole("group", { name: /^Zone 2-06: cooling setpoint from/ });
  await change.getByLabel("Was it changed").selectOption("confirmed");
  await change.getByLabel("Why").fill("Complaint of a warm meeting.");
  await page.locator("form", { has: change }).getByRole("button", { name: "Enter" }).click();
  await expect(page.getByRole("row", { name: /^Zone 2-06: cooling setpoint.*confirmed/ })).toBeVisible();
  await expect(change).toHaveCount(0);
});
