import { beSignedIn, demoPath, expect, test } from "./fixtures";

test("an amount of one zone is typed by keyboard, moves the figures, and is not lost with its zone", async ({
  page,
}) => {
  // The first page of a fresh building waits for its whole analysis.
  test.setTimeout(300_000);
  await beSignedIn(page, "demo");
  await page.goto(demoPath("/proposals/new"));
  const picture = page.locator("[data-live-picture]");
  const saving = async () => Number(await picture.getAttribute("data-live-picture"));
  const whole = await saving();
  const own = page.getByLabel("Cooling setpoint, zone 1-05, One kelvin");
  await expect(own).toHaveAttribute("placeholder", "1");
  await page.getByLabel("Cooling setpoint, zone 1-05, Half a kelvin").focus();
  await page.keyboard.press("Tab");
  await expect(own).toBeFocused();
  await page.keyboard.type("0");
  await expect.poll(saving).toBeLessThan(whole);
  const without = await saving();

  // A zone that the diagnosis left out comes in with a field; it keeps what was typed when it goes and comes back.
  const tick = page.getByLabel("Cooling setpoint, zone 1-08", { exact: true });
  await tick.focus();
  await page.keyboard.press("Space");
  const added = page.getByLabel("Cooling setpoint, zone 1-08, One kelvin");
  await added.fill("0.5");
  await expect.poll(saving).toBeGreaterThan(without);
  await tick.uncheck();
  await expect(added).toBeHidden();
  await expect.poll(saving).toBe(without);
  await tick.check();
  await expect(added).toHaveValue("0.5");

  // A season of one month counts less than the months of summer.
  const summer = await saving();
  await page.getByLabel("From", { exact: true }).selectOption({ label: "July" });
  await page.getByLabel("To", { exact: true }).selectOption({ label: "July" });
  await expect.poll(saving).toBeLessThan(summer);
});
