import type { Browser } from "@playwright/test";
import { accessibilityFaults } from "./accessibility-faults";
import { beSignedIn, demoPath, expect, type Locator, type Page, test, watchConsole } from "./fixtures";
import { newLink } from "./report-link";

const PHONE = { width: 390, height: 844 };

/** What a screen reader meets on the form, in the order of need. */
const FORM_ORDER = [
  'heading "How is the temperature where you sit?"',
  'group "Right now I feel"',
  'radio "Hot"',
  'radio "Neutral"',
  'radio "Cold"',
  'group "I would like it"',
  'radio "Warmer"',
  "Add more, if you like",
  'combobox "I have felt so (optional)"',
  'group "I feel it"',
  'checkbox "Feet and legs"',
  'group "Around me"',
  'checkbox "There is a draught"',
  'group "What I wear comes nearest to (optional)"',
  'radio "Jacket, trousers"',
  'combobox "In the last half hour I was mostly (optional)"',
  'textbox "Anything else (optional)"',
  'textbox "Mail address for an answer (optional)"',
  'button "Send"',
  'navigation "Language"',
];
const RECEIPT_ORDER = [
  'heading "Thank you, your report is in"',
  "You felt: Cool",
  'heading "What happens next"',
  'heading "So far"',
  'link "Report again"',
];

/** Says what of an order is missing from a page as a screen reader meets it, or comes out of turn. */
async function expectOrder(page: Page, order: readonly string[]): Promise<void> {
  const read = await page.getByRole("main").ariaSnapshot();
  const places = order.map((each) => [each, read.indexOf(each)] as const);
  expect(places.filter(([, at]) => at < 0)).toEqual([]);
  expect(places.map(([each]) => each)).toEqual([...places].sort((a, b) => a[1] - b[1]).map(([each]) => each));
}

/** The same of a page whose scripts never come: axe is a script itself, and cannot run where all are off. */
async function faultsUnscripted(browser: Browser, address: string): Promise<string[]> {
  const context = await browser.newContext({ viewport: PHONE, locale: "en-GB" });
  const page = await context.newPage();
  await page.route("**/*", (route) => (route.request().resourceType() === "script" ? route.abort() : route.continue()));
  const faults = await accessibilityFaults(page, address);
  await context.close();
  return faults;
}

for (const javaScriptEnabled of [true, false])
  test(`an occupant reports with a phone in at most five taps, ${javaScriptEnabled ? "with" : "without"} script, and reads the answer at the private address`, async ({
    page,
    browser,
    consoleErrors,
  }) => {
    const address = await newLink(page, 3);
    const context = await browser.newContext({
      viewport: PHONE,
      hasTouch: true,
      locale: "en-GB",
      javaScriptEnabled,
    });
    const occupant = await context.newPage();
    watchConsole(occupant, consoleErrors);
    await occupant.goto(address);
    let taps = 0;
    const tap = async (what: Locator): Promise<void> => {
      taps += 1;
      await what.tap();
    };
    await tap(occupant.getByText("Cool", { exact: true }));
    await tap(occupant.getByText("Warmer", { exact: true }));
    await expect(occupant.getByLabel("Cool", { exact: true })).toBeChecked();
    await expect(occupant.getByLabel("Warmer", { exact: true })).toBeChecked();
    await tap(occupant.getByRole("button", { name: "Send" }));
    await expect(occupant.getByRole("heading", { level: 1 })).toHaveText("Thank you, your report is in");
    expect(taps).toBe(3);
    // By the keystroke-level model (Card, Moran & Newell 1983, from memory): 1.1 s for pointing at a thing, 0.2 s for a
    // tap and 1.35 s for making up one's mind, at each.
    expect(taps * (1.1 + 0.2 + 1.35)).toBeLessThanOrEqual(15);
    await expectOrder(occupant, RECEIPT_ORDER);
    const receipt = occupant.url();

    await page.goto(demoPath("/comfort-reports"));
    await page.getByRole("table", { name: "Comfort reports, newest first" }).getByRole("link").first().click();
    await page.getByRole("combobox", { name: /^What was done/ }).selectOption({ label: "setpoint changed" });
    await page.getByRole("textbox", { name: /^What was changed/ }).fill("Cooling setpoint 21.5 to 23.0");
    await page
      .getByRole("textbox", { name: /^Answer to the occupant/ })
      .fill("Your zone is cooled less from today on.");
    await page.getByRole("button", { name: "Keep it" }).click();
    await expect(page.getByRole("heading", { name: "What was done: answered" })).toBeVisible();

    await occupant.goto(receipt);
    await expect(occupant.getByText("Your zone is cooled less from today on.")).toBeVisible();
    await expect(occupant.getByText("21.5 to 23.0")).toHaveCount(0);
    expect(
      await (javaScriptEnabled ? accessibilityFaults(occupant, receipt) : faultsUnscripted(browser, receipt)),
    ).toEqual([]);
    await context.close();
  });

for (const javaScriptEnabled of [true, false])
  test(`the form reads in the order of need, in the reader's language, ${javaScriptEnabled ? "with" : "without"} script, and has no accessibility violation`, async ({
    page,
    browser,
  }) => {
    const address = await newLink(page, 4);
    const context = await browser.newContext({ viewport: PHONE, locale: "fr-CA", javaScriptEnabled });
    const occupant = await context.newPage();
    await occupant.goto(address);
    await expect(occupant.getByRole("heading", { level: 1 })).toHaveText("Comment est la température à votre place ?");
    await occupant.getByRole("link", { name: "English" }).click();
    await expect(occupant.getByRole("heading", { level: 1 })).toHaveText("How is the temperature where you sit?");
    await occupant.getByText("Add more, if you like").click();
    await expectOrder(occupant, FORM_ORDER);
    const inGerman = `${address}?language=de`;
    expect(
      await (javaScriptEnabled ? accessibilityFaults(occupant, inGerman) : faultsUnscripted(browser, inGerman)),
    ).toEqual([]);
    await context.close();
  });

test("keeps what was entered when an address is wrong, and says so in the reader's language", async ({
  page,
  browser,
}) => {
  const address = await newLink(page, 5);
  for (const javaScriptEnabled of [true, false]) {
    const context = await browser.newContext({ viewport: PHONE, locale: "es-ES", javaScriptEnabled });
    const occupant = await context.newPage();
    await occupant.goto(address);
    await occupant.getByLabel("Frío", { exact: true }).check();
    await occupant.getByLabel("Más cálido", { exact: true }).check();
    await occupant.getByText("Añadir más, si lo desea").click();
    await occupant.getByLabel("Pies y piernas").check();
    await occupant.getByLabel("Falda, manga corta").check();
    await occupant.getByLabel("Correo electrónico").fill("nadie");
    await occupant.getByRole("button", { name: "Enviar" }).click();
    await expect(occupant.getByRole("alert").first()).toContainText("No se ha perdido nada");
    await expect(occupant.getByLabel("Frío", { exact: true })).toBeChecked();
    await expect(occupant.getByLabel("Pies y piernas")).toBeChecked();
    await expect(occupant.getByLabel("Falda, manga corta")).toBeChecked();
    await expect(occupant.getByLabel("Correo electrónico")).toHaveValue("nadie");
    await occupant.getByLabel("Correo electrónico").fill("nadie@example.com");
    await occupant.getByRole("button", { name: "Enviar" }).click();
    await expect(occupant.getByRole("heading", { level: 1 })).toHaveText("Gracias, hemos recibido su aviso");
    await context.close();
  }
});

test("a call is put on record, and a table of past complaints is read, corrected and taken in", async ({ page }) => {
  await beSignedIn(page, "demo");
  await page.goto(demoPath("/comfort-reports/enter"));
  await page.getByLabel("Zone", { exact: true }).selectOption({ index: 2 });
  const zone = await page.getByLabel("Zone", { exact: true }).inputValue();
  await page.getByLabel("Felt").selectOption({ label: "Cold" });
  await page.getByRole("button", { name: "Put it on record" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "cooler, warmer" })).toBeVisible();
  await expect(page.getByLabel("Zone", { exact: true })).toHaveValue(zone);
  await page.getByLabel("Would like it").selectOption({ label: "Warmer" });
  await page.getByRole("button", { name: "Put it on record" }).click();
  await expect(page.getByText("The report is on record")).toBeVisible();

  await page.goto(demoPath("/comfort-reports/past"));
  await page
    .getByLabel("Or the table itself")
    .fill(`date,zone,text\n2024-07-01,${zone},freezing again\n2024-07-02,${zone},stuffy\n2024-07-03,none,hot\n`);
  await page.getByRole("button", { name: "Read the table" }).click();
  const fates = page.getByRole("table", { name: "What becomes of each row" });
  await expect(fates).toContainText("There is no zone none in this building.");
  await page.getByLabel("Line 3 is about").selectOption({ label: "Hot" });
  await page.getByRole("button", { name: "Read the table" }).click();
  await page.getByRole("button", { name: "Take in 2 reports" }).click();
  await expect(page.getByText("2 reports taken in")).toBeVisible();
});
