import { accessibilityFaults } from "./accessibility-faults";
import { test as base, beSignedIn, expect, type Page, watchConsole } from "./fixtures";
import { officeOfDesks, storedEntries } from "./walk-office";

/** Without network every try to send is an error on the console by the browser's own doing; any other fails the test. */
const test = base.extend({
  consoleErrors: async ({ page }, use) => {
    const errors: string[] = [];
    watchConsole(page, errors);
    await use(errors);
    expect(errors.filter((error) => !error.includes("net::ERR_"))).toEqual([]);
  },
});
test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

const idOf = (address: string): number => Number(/buildings\/(\d+)/.exec(address)?.[1]);

async function startWalk(page: Page, address: string): Promise<void> {
  await page.goto(`${address}/walk`);
  await page.getByRole("button", { name: "Start a walk" }).click();
  await page.getByRole("button", { name: /^Floor 2/ }).tap();
}

/** Enters a fan heater with two readings, as a thumb would. */
async function enterHeater(page: Page, low: string, high: string): Promise<void> {
  await page.getByRole("button", { name: "Heater or fan found" }).tap();
  await page.getByRole("button", { name: /^fan-forced heater.*1500 W/ }).tap();
  await expect(page.getByLabel("low heat")).toBeFocused();
  await page.keyboard.type(low);
  await page.keyboard.press("Enter");
  await page.keyboard.type(high);
  await page.getByRole("button", { name: "Save, next desk" }).tap();
}

test("a walk of 20 desks without network, loaded again in the middle, is stored once each", async ({
  page,
  context,
}) => {
  test.setTimeout(240_000);
  const address = await officeOfDesks(page, "Walked office", 20);
  await startWalk(page, address);
  await expect(page.getByText("This page opens without network.")).toBeVisible();
  await context.setOffline(true);
  for (let desk = 1; desk <= 20; desk++) {
    const code = `2-14-${String(desk).padStart(2, "0")}`;
    await expect(page.getByRole("heading", { name: `Desk ${code}` })).toBeVisible();
    if (desk % 4 === 0) await enterHeater(page, "741", "1443");
    else await page.getByRole("button", { name: "Nothing here" }).tap();
    await expect(page.getByText(`${desk} of 20 desks`)).toBeVisible();
    if (desk === 10) {
      await page.reload();
      await expect(page.getByText("10 of 20 desks")).toBeVisible();
      await expect(page.getByText("10 entries are unsent and kept on this phone: no network.")).toBeVisible();
    }
  }
  await expect(page.getByText("Every desk of floor 2 has been seen.")).toBeVisible();
  expect(storedEntries(idOf(address))).toEqual({});

  // The first answer is lost on its way back: the server has stored what the phone still holds for unsent.
  let lost = 0;
  await context.route("**/walk/entries", async (route) => {
    const answer = await route.fetch();
    if (lost++ === 0 && answer.ok()) return route.abort("connectionreset");
    return route.fulfill({ response: answer });
  });
  await context.setOffline(false);
  await expect(page.getByText("Everything is sent.")).toBeVisible({ timeout: 60_000 });
  expect(lost).toBeGreaterThan(1);
  const stored = storedEntries(idOf(address));
  expect(Object.keys(stored)).toHaveLength(20);
  expect(Object.values(stored).every((entries) => entries === 1)).toBe(true);

  await page.goto(`${address}/devices`);
  for (const label of ["D-001", "D-002", "D-003", "D-004", "D-005"])
    await expect(page.getByRole("link", { name: label, exact: true })).toHaveCount(1);
  await expect(page.getByRole("link", { name: "D-006", exact: true })).toHaveCount(0);
  await page.goto(`${address}/walk`);
  await expect(page.getByText("20 of 20 desks")).toBeVisible();
});

test("a device of a known class with two readings takes at most 12 taps", async ({ page }) => {
  const address = await officeOfDesks(page, "Tapped office", 3);
  await startWalk(page, address);
  await enterHeater(page, "738", "1452");
  await expect(page.getByRole("heading", { name: "Desk 2-14-02" })).toBeVisible();
  // Every touch and every key from here on, as the page itself sees them.
  await page.evaluate(() => {
    const count = { taps: 0 };
    (window as unknown as { counted: typeof count }).counted = count;
    for (const name of ["pointerdown", "keydown"]) document.addEventListener(name, () => (count.taps += 1), true);
  });
  await enterHeater(page, "741", "1443");
  await expect(page.getByRole("heading", { name: "Desk 2-14-03" })).toBeVisible();
  const taps = await page.evaluate(() => (window as unknown as { counted: { taps: number } }).counted.taps);
  expect(taps).toBeGreaterThan(3);
  expect(taps).toBeLessThanOrEqual(12);
  // Time by the keystroke-level model (Card, Moran & Newell 1983, from memory): 1.1 s for pointing at a thing and 1.35 s for
  // making up one's mind, here before each of the four things that are chosen. No clock is read: a busy machine is no thumb.
  expect(1.1 * taps + 1.35 * 4).toBeLessThanOrEqual(25);
  await page.getByRole("link", { name: "Devices" }).click();
  await page.getByRole("link", { name: "D-002", exact: true }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Device D-002");
  await expect(page.getByLabel("Power", { exact: true }).nth(3)).toHaveValue("1443");
});

test("what someone else entered of a desk is shown beside one's own, and nothing is written over", async ({
  page,
  context,
  browser,
}) => {
  const address = await officeOfDesks(page, "Shared office", 2);
  await startWalk(page, address);
  const other = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true });
  const second = await other.newPage();
  await beSignedIn(second, "empty");
  await second.goto(`${address}/walk?desk=2-14-01`);
  await expect(second.getByRole("heading", { name: "Desk 2-14-01" })).toBeVisible();

  await context.setOffline(true);
  await page.getByRole("button", { name: "Nothing here" }).tap();
  await expect(page.getByText("1 entry is unsent")).toBeVisible();
  await enterHeater(second, "741", "1443");
  // Stored, and not only nothing to send yet: the other one must come second.
  await expect.poll(() => storedEntries(idOf(address))).toEqual({ "2-14-01": 1 });
  await context.setOffline(false);
  const decision = page.getByRole("region", { name: "Decide on 2-14-01" });
  await expect(decision).toContainText('"device D-001" was entered by');
  expect(storedEntries(idOf(address))).toEqual({ "2-14-01": 1 });
  await decision.getByRole("button", { name: "Keep mine beside it" }).tap();
  await expect(page.getByText("Everything is sent.")).toBeVisible();
  expect(storedEntries(idOf(address))).toEqual({ "2-14-01": 2 });
  await other.close();
});

test("a label that someone else has used meanwhile is asked for again, and the entry is not lost", async ({
  page,
  context,
  browser,
}) => {
  const address = await officeOfDesks(page, "Labelled office", 2);
  await startWalk(page, address);
  const other = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true });
  const second = await other.newPage();
  await beSignedIn(second, "empty");
  await second.goto(`${address}/walk?desk=2-14-02`);
  await expect(second.getByRole("heading", { name: "Desk 2-14-02" })).toBeVisible();

  await context.setOffline(true);
  await enterHeater(page, "741", "1443");
  await expect(page.getByText("1 entry is unsent")).toBeVisible();
  await enterHeater(second, "738", "1452");
  // Stored, and not only nothing to send yet: the other one must come second.
  await expect.poll(() => storedEntries(idOf(address))).toEqual({ "2-14-02": 1 });
  await context.setOffline(false);
  const decision = page.getByRole("region", { name: "Decide on 2-14-01" });
  await expect(decision).toContainText("D-001 is already on the register");
  await page.reload();
  await decision.getByLabel("Another label").fill("D-050");
  await decision.getByRole("button", { name: "Send with this label" }).tap();
  await expect(page.getByText("Everything is sent.")).toBeVisible();
  expect(storedEntries(idOf(address))).toEqual({ "2-14-01": 1, "2-14-02": 1 });
  await page.goto(`${address}/devices`);
  for (const label of ["D-001", "D-050"])
    await expect(page.getByRole("link", { name: label, exact: true })).toHaveCount(1);
  await other.close();
});

test("the screens of a walk have no accessibility violation", async ({ page }) => {
  const address = await officeOfDesks(page, "Looked-at office", 2);
  await startWalk(page, address);
  await expect(page.getByRole("heading", { name: "Desk 2-14-01" })).toBeVisible();
  expect(await accessibilityFaults(page, `${address}/walk`)).toEqual([]);
});

test("the kept page goes with the sign-in, and what is unsent stays", async ({ page, context }) => {
  const address = await officeOfDesks(page, "Signed-out office", 2);
  await startWalk(page, address);
  await expect(page.getByText("This page opens without network.")).toBeVisible();
  await context.setOffline(true);
  await page.getByRole("button", { name: "Nothing here" }).tap();
  await expect(page.getByText("1 entry is unsent")).toBeVisible();
  await context.setOffline(false);
  const cookies = await context.cookies();
  await context.route("**/walk/entries", (route) => route.abort("connectionrefused"));
  await context.clearCookies();
  await page.goto(`${address}/walk`);
  await expect(page.getByRole("button", { name: "Sign in" })).toBeVisible();
  await context.setOffline(true);
  await expect(page.goto(`${address}/walk`)).rejects.toThrow("net::ERR_");
  await context.setOffline(false);
  await context.unroute("**/walk/entries");
  await context.addCookies(cookies);
  await page.goto(`${address}/walk`);
  await expect(page.getByText("Everything is sent.")).toBeVisible();
  expect(storedEntries(idOf(address))).toEqual({ "2-14-01": 1 });
});
