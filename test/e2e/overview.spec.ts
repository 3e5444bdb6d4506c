import { beSignedIn, demoPath, expect, type Page, test } from "./fixtures";
import { printedNumber, tableRows, tableTotals } from "./printed";

const BY_COMPONENT = { name: /^Cost of overcooling by component/ };
const BY_ZONE = { name: /^Cost of overcooling by zone/ };

test.beforeEach(async ({ page }) => {
  await beSignedIn(page, "demo");
});

/** Low, high and most likely of the headline. */
async function headline(page: Page): Promise<{ low: number; high: number; likely: number }> {
  const text =
    (await page
      .getByText(/\$[\d,]+\u2013[\d,]+ a year, most likely \$[\d,]+/)
      .first()
      .textContent()) ?? "";
  const [low, high, likely] = (text.match(/[\d,]+(?=\D|$)/g) ?? [])
    .filter((each) => /\d/.test(each))
    .map(printedNumber);
  if (low === undefined || high === undefined || likely === undefined) throw new Error(`no range: ${text}`);
  return { low, high, likely };
}

const sumOf = (rows: Record<string, string>[], column: string): number =>
  rows.reduce((sum, row) => sum + printedNumber(row[column] ?? ""), 0);

test("prints rows that add up to the total, by component and by zone, and both to the same", async ({ page }) => {
  await page.goto(demoPath());
  const components = page.getByRole("table", BY_COMPONENT);
  const zones = page.getByRole("table", BY_ZONE);
  const [componentRows, zoneRows] = [await tableRows(components), await tableRows(zones)];
  const totals = await tableTotals(components);
  expect(componentRows.length).toBeGreaterThanOrEqual(6);
  expect(zoneRows.filter((row) => /^\d-\d\d$/.test(row.Zone ?? ""))).toHaveLength(36);
  for (const column of ["At stated values", "Of the most likely"])
    expect(sumOf(componentRows, column), column).toBe(printedNumber(totals[column] ?? ""));
  const total = printedNumber(totals["Of the most likely"] ?? "");
  expect(sumOf(zoneRows, "Of the most likely")).toBe(total);
  expect(printedNumber((await tableTotals(zones))["Of the most likely"] ?? "")).toBe(total);
  const { low, high, likely } = await headline(page);
  expect(low).toBeLessThan(likely);
  expect(likely).toBeLessThan(high);
  // The headline is rounded to what its width allows.
  expect(Math.abs(likely - total)).toBeLessThanOrEqual((high - low) / 10);
  for (const row of componentRows) {
    const [p10, p90] = [printedNumber(row.P10 ?? ""), printedNumber(row.P90 ?? "")];
    expect(p10, row.Component).toBeLessThanOrEqual(p90);
  }
});

test("unfolds every component to its formula, values with units, origins and sources", async ({ page }) => {
  await page.goto(demoPath());
  const components = page.getByRole("table", BY_COMPONENT);
  const rows = await tableRows(components);
  const workings = components.getByRole("table", { name: /^Terms of / });
  expect(await components.getByText("Working", { exact: true }).count()).toBeGreaterThanOrEqual(rows.length);
  // A working can be read without opening each one by one: the page of the whole working writes all of them out.
  await components.getByText("Working", { exact: true }).first().click();
  await expect(workings.first()).toBeVisible();
  await page.getByRole("link", { name: "The whole working" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Working");
  for (const row of rows) {
    const section = page.getByRole("region", { name: new RegExp(`^${escaped(row.Component ?? "")}: `) });
    await expect(section, row.Component).toContainText(/ = /);
    const terms = await tableRows(section.getByRole("table").first());
    expect(terms.length, row.Component).toBeGreaterThan(0);
    for (const term of terms) {
      expect(term.Value, `${row.Component}, ${term.What}`).toMatch(/\d/);
      expect(term.Unit, `${row.Component}, ${term.What}`).not.toBe("");
      expect(term.Origin, `${row.Component}, ${term.What}`).toMatch(/^(measured|entered|default|computed)$/);
    }
  }
});

test("lets one component be recomputed by hand from the printed working, down to a device", async ({ page }) => {
  await page.goto(demoPath("/working"));
  const heaters = page.getByRole("region", { name: /^space heaters: / });
  const component = printedNumber((await heaters.getByRole("heading").first().textContent())?.split(":")[1] ?? "");
  const zones = await tableRows(heaters.getByRole("table").first());
  expect(Math.abs(sumOf(zones, "Value") - component), "sum of the zones").toBeLessThanOrEqual(1);

  // The dearest zone: its cost is its electricity times the price.
  const dearest = zones.reduce((most, each) =>
    printedNumber(each.Value ?? "") > printedNumber(most.Value ?? "") ? each : most,
  );
  await page
    .getByRole("link", { name: `Working of ${dearest.What}` })
    .first()
    .click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(`Working of ${dearest.What}`);
  const terms = await tableRows(page.getByRole("main").getByRole("table").first());
  const value = (what: RegExp) => printedNumber(terms.find((term) => what.test(term.What ?? ""))?.Value ?? "");
  const energyKwh = value(/^heater electricity/);
  const pricePerKwh = value(/^marginal electricity price$/);
  expect(close(energyKwh * pricePerKwh, printedNumber(dearest.Value ?? ""))).toBe(true);
  const price = terms.find((term) => /price/.test(term.What ?? ""));
  expect(price).toMatchObject({ Unit: "USD/kWh", Origin: "entered" });

  // Its electricity is that of the heaters that stand there, in the occupied hours of the cooling season.
  await page.getByText("Working", { exact: true }).first().click();
  await expect(page.getByRole("main")).toContainText(/kWh a year/);
});

test("names a source or a page of readings for every value that was not computed", async ({ page }) => {
  await page.goto(demoPath("/working"));
  const links = await page
    .getByRole("link", { name: /^Working of/ })
    .evaluateAll((elements) => elements.map((element) => (element as HTMLAnchorElement).href));
  const byComponent = new Map(links.map((link) => [new URL(link).pathname, link]));
  expect(byComponent.size).toBeGreaterThanOrEqual(4);
  let checked = 0;
  for (const link of byComponent.values()) {
    await page.goto(link);
    for (const table of await page.getByRole("main").locator("table").all()) {
      for (const term of await tableRows(table)) {
        if (!term.Origin || term.Origin === "computed") continue;
        expect(term.Source, `${link}: ${term.What}`).not.toBe("");
        checked += 1;
      }
    }
  }
  expect(checked).toBeGreaterThan(8);
});

test("takes a building's own value with its reason, shows the default beside it, and goes back", async ({ page }) => {
  const LABEL = /^seasonal COP of the cooling plant, VAV/;
  const total = async () => {
    await page.goto(demoPath());
    return printedNumber((await tableTotals(page.getByRole("table", BY_COMPONENT)))["At stated values"] ?? "");
  };
  const before = await total();
  await page.goto(demoPath("/assumptions"));
  const used = page.getByRole("table", { name: "Used for this building" });
  const line = async () => (await tableRows(used)).find((row) => LABEL.test(row.Assumption ?? "")) ?? {};
  const given = await line();
  expect(given).toMatchObject({ Is: "default" });
  const byDefault = given.Value ?? "";
  const place = used.getByRole("row").filter({ has: page.getByRole("rowheader", { name: LABEL }) });
  const detail = place.locator("xpath=following-sibling::tr[1]");
  await detail.getByText("Give your own").click();
  await detail.getByLabel("Value", { exact: true }).fill("2.0");
  await detail.getByLabel("Lowest plausible").fill("1.8");
  await detail.getByLabel("Highest plausible").fill("2.2");
  await detail.getByRole("button", { name: "Use this value" }).click();
  await expect(detail.getByRole("alert"), "a reason is asked for").toBeVisible();
  await detail.getByLabel("Reason").fill("Plant measured in August");
  await detail.getByRole("button", { name: "Use this value" }).click();
  await expect(place).toContainText("your own");
  expect(await line()).toMatchObject({ Value: "2", Is: "your own" });
  expect((await line()).Source).toContain("Plant measured in August");
  await expect(detail).toContainText(`Default`);
  await expect(detail).toContainText(new RegExp(`Default\\s*${escaped(byDefault)} kWh/kWh`));
  const after = await total();
  // A plant of lower COP makes every kWh of cooling dearer.
  expect(after).toBeGreaterThan(before);
  await page.goto(demoPath("/assumptions"));
  await detail.getByText("Change or withdraw").click();
  await detail.getByRole("button", { name: "Go back to the default" }).click();
  await expect(place).not.toContainText("your own");
  expect(await line()).toMatchObject({ Value: byDefault, Is: "default" });
  expect(await total()).toBe(before);
});

/** Equal but for the four digits to which the factors are printed. */
const close = (a: number, b: number): boolean => Math.abs(a - b) <= 0.002 * Math.max(Math.abs(a), Math.abs(b));
const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
