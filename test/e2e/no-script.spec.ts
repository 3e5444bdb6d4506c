import { beSignedIn, demoPath, expect, signIn, test } from "./fixtures";

test.use({ javaScriptEnabled: false });

test("signs in and reads the register without script", async ({ page }) => {
  await signIn(page, "demo");
  await page.goto(demoPath("/devices"));
  await expect(page.getByRole("table", { name: "Heaters and fans" })).toBeVisible();
  await page.goto(demoPath("/zones/1"));
  await page.getByText("The numbers as a table").first().click();
  await expect(
    page.getByRole("table", { name: "Zone air temperature, setpoints and occupied cooling-season hours by day" }),
  ).toBeVisible();
});

test("registers a device without script, and says without script what is wrong with it", async ({ page }) => {
  await beSignedIn(page, "demo");
  await page.goto(demoPath("/devices/new"));
  await page.getByLabel("Sort of device").selectOption({ label: "Heater: compact fan heater, about 900 W" });
  await page.getByRole("button", { name: "Show its settings" }).click();
  await page.getByLabel("Label").fill("N-001");
  await page.getByLabel("Zone", { exact: true }).selectOption({ index: 2 });
  const zone = await page.getByLabel("Zone", { exact: true }).inputValue();
  const high = page.getByRole("group", { name: "high heat", exact: true });
  await high.getByLabel("Power known by").selectOption({ label: "clamp meter" });
  await high.getByLabel("Current").fill("-7.5");
  await high.getByLabel("Selected").fill("200");
  await page.getByRole("button", { name: "Register the device" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "negative" })).toContainText(
    "A current cannot be negative; -7.5 A was typed.",
  );
  await expect(page.getByLabel("Zone", { exact: true })).toHaveValue(zone);
  await expect(high.getByLabel("Power known by")).toHaveValue("clamp");
  await high.getByLabel("Current").fill("7.5");
  await page.getByRole("button", { name: "Register the device" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Device N-001");
  await expect(page.getByRole("table", { name: "What each setting draws and costs" })).toContainText("180.0");
});

test("takes a report without script", async ({ page, browser }) => {
  await beSignedIn(page, "demo");
  await page.goto(demoPath("/comfort-reports/links"));
  await page.getByLabel("Zone", { exact: true }).selectOption({ index: 2 });
  await page.getByRole("button", { name: "Make the link" }).click();
  const address =
    (await page
      .getByRole("link", { name: /\/report\// })
      .first()
      .textContent()) ?? "";
  const context = await browser.newContext({ javaScriptEnabled: false, viewport: { width: 390, height: 844 } });
  const occupant = await context.newPage();
  await occupant.goto(address);
  await occupant.getByRole("button", { name: "Send" }).click();
  await expect(occupant.getByRole("alert").first()).toBeVisible();
  await occupant.getByLabel("Cold", { exact: true }).check();
  await occupant.getByLabel("Warmer", { exact: true }).check();
  await occupant.getByLabel("Anything else").fill("Sent without script.");
  await occupant.getByRole("button", { name: "Send" }).click();
  await expect(occupant.getByRole("heading", { level: 1 })).toHaveText("Thank you, your report is in");
  await context.close();
  await page.goto(demoPath("/comfort-reports"));
  await expect(page.getByRole("table", { name: "Comfort reports, newest first" })).toContainText(
    "Sent without script.",
  );
});

test("says of a verdict what was found on site without script", async ({ page }) => {
  await beSignedIn(page, "demo");
  await page.goto(demoPath("/zones/1"));
  const said = page.getByRole("combobox", { name: "What do you say of it" });
  await said.selectOption("rejected");
  await page.getByRole("button", { name: "Keep it" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "found on site" })).toBeVisible();
  await expect(said).toHaveValue("rejected");
  await page.getByRole("textbox", { name: /^What was found/ }).fill("Box looked at: the minimum was cut last week.");
  await page.getByRole("button", { name: "Keep it" }).click();
  const table = page.getByRole("table", { name: "What was said of this zone's verdict" });
  await expect(table).toContainText("Box looked at: the minimum was cut last week.");
  await expect(table).toContainText("rejected");
});
