import { accessibilityFaults } from "./accessibility-faults";
import { beSignedIn, demoPath, expect, type Page, test, watchConsole } from "./fixtures";

const PHONE = { width: 390, height: 844 };

/** Makes a link for a zone of the demo building and gives back its address. */
async function newLink(page: Page, zone: number): Promise<string> {
  await beSignedIn(page, "demo");
  await page.goto(demoPath("/comfort-reports/links"));
  await page.getByLabel("Zone", { exact: true }).selectOption({ index: zone });
  const link = page.getByRole("link", { name: /\/report\// });
  const before = await link.count();
  await page.getByRole("button", { name: "Make the link" }).click();
  await expect(link).toHaveCount(before + 1);
  return (await link.first().textContent()) ?? "";
}

test("an occupant reports with a phone in at most five taps, and reads the answer at the private address", async ({
  page,
  browser,
  consoleErrors,
}) => {
  const address = await newLink(page, 3);
  const context = await browser.newContext({ viewport: PHONE, hasTouch: true, locale: "en-GB" });
  const occupant = await context.newPage();
  watchConsole(occupant, consoleErrors);
  await occupant.goto(address);
  await occupant.evaluate(() => {
    const count = { taps: 0 };
    Object.assign(window, { counted: count });
    document.addEventListener("pointerdown", () => (count.taps += 1), true);
  });
  await occupant.getByText("Cool", { exact: true }).tap();
  await occupant.getByText("Warmer", { exact: true }).tap();
  const taps = await occupant.evaluate(() => (window as unknown as { counted: { taps: number } }).counted.taps);
  await occupant.getByRole("button", { name: "Send" }).tap();
  await expect(occupant.getByRole("heading", { level: 1 })).toHaveText("Thank you, your report is in");
  expect(taps).toBe(2);
  // With the button three. By the keystroke-level model (Card, Moran & Newell 1983, from memory): 1.1 s for pointing at a
  // thing, 0.2 s for a tap and 1.35 s for making up one's mind, at each.
  expect((taps + 1) * (1.1 + 0.2 + 1.35)).toBeLessThanOrEqual(15);
  await expect(occupant.getByText("You felt: Cool")).toBeVisible();
  const receipt = occupant.url();

  await page.goto(demoPath("/comfort-reports"));
  await page.getByRole("table", { name: "Comfort reports, newest first" }).getByRole("link").first().click();
  await page.getByRole("combobox", { name: /^What was done/ }).selectOption({ label: "setpoint changed" });
  await page.getByRole("textbox", { name: /^What was changed/ }).fill("Cooling setpoint 21.5 to 23.0");
  await page.getByRole("textbox", { name: /^Answer to the occupant/ }).fill("Your zone is cooled less from today on.");
  await page.getByRole("button", { name: "Keep it" }).click();
  await expect(page.getByRole("heading", { name: "What was done: answered" })).toBeVisible();

  await occupant.goto(receipt);
  await expect(occupant.getByText("Your zone is cooled less from today on.")).toBeVisible();
  await expect(occupant.getByText("21.5 to 23.0")).toHaveCount(0);
  expect(await accessibilityFaults(occupant, receipt)).toEqual([]);
  await context.close();
});

test("the form reads in the order of need, in the reader's language, and has no accessibility violation", async ({
  page,
  browser,
}) => {
  const address = await newLink(page, 4);
  const context = await browser.newContext({ viewport: PHONE, locale: "fr-CA" });
  const occupant = await context.newPage();
  await occupant.goto(address);
  await expect(occupant.getByRole("heading", { level: 1 })).toHaveText("Comment est la température à votre place ?");
  await occupant.getByRole("link", { name: "English" }).click();
  await expect(occupant.getByRole("heading", { level: 1 })).toHaveText("How is the temperature where you sit?");
  await occupant.getByText("Add more, if you like").click();
  const read = await occupant.getByRole("main").ariaSnapshot();
  const order = [
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
  const places = order.map((each) => [each, read.indexOf(each)] as const);
  expect(places.filter(([, at]) => at < 0)).toEqual([]);
  expect(places.map(([each]) => each)).toEqual([...places].sort((a, b) => a[1] - b[1]).map(([each]) => each));
  expect(await accessibilityFaults(occupant, `${address}?language=de`)).toEqual([]);
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

test("two hundred posts through one link: the honest first one counts, the rest are told plainly, others are served", async ({
  page,
  browser,
}) => {
  const address = await newLink(page, 6);
  const context = await browser.newContext({ viewport: PHONE, locale: "en-GB", javaScriptEnabled: false });
  const occupant = await context.newPage();
  await occupant.goto(address);
  await occupant.getByLabel("Cold", { exact: true }).check();
  await occupant.getByLabel("Warmer", { exact: true }).check();
  await occupant.getByText("Add more, if you like").click();
  await occupant.getByLabel("Anything else").fill("The honest one.");
  await occupant.getByRole("button", { name: "Send" }).click();
  await expect(occupant.getByRole("heading", { level: 1 })).toHaveText("Thank you, your report is in");

  // The form as a program would post it: the fields of the page, each time with a number of its own.
  await occupant.goto(address);
  const fields = await occupant
    .locator("form input[type=hidden]")
    .evaluateAll((inputs) => inputs.map((each) => [(each as HTMLInputElement).name, (each as HTMLInputElement).value]));
  const answers = { received: 0, kept: 0, refused: 0, other: 0 };
  for (let i = 0; i < 199; i++) {
    const sent = {
      ...Object.fromEntries(fields),
      submissionId: `flood-${i}`,
      thermalSensation: "3",
      preference: "cooler",
    };
    const response = await context.request.post(address, { multipart: sent });
    const [text, isReceipt] = [await response.text(), response.url().includes("/report/follow/")];
    if (isReceipt && text.includes("Thank you, your report is in")) answers.received++;
    else if (isReceipt && text.includes("Thank you, your report is kept")) answers.kept++;
    else if (/role="alert"[^>]*>(?:<[^>]*>)*Very many reports/.test(text)) answers.refused++;
    else answers.other++;
    if (i === 150) await page.goto(demoPath("/comfort-reports"));
  }
  expect(answers).toEqual({ received: 29, kept: 30, refused: 140, other: 0 });
  await page.goto(demoPath("/comfort-reports"));
  await expect(page.getByText("30 reports are kept aside")).toBeVisible();
  await expect(page.getByRole("table", { name: "Comfort reports, newest first" })).toContainText("The honest one.");
  await page.getByRole("link", { name: "Look at them" }).click();
  await page.getByRole("button", { name: "Drop" }).first().click();
  await expect(page.getByRole("button", { name: "Drop" })).toHaveCount(29);
  await context.close();
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
