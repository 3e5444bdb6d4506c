import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { gunzipSync } from "node:zlib";
import { baseUrl } from "../support/servers";
import { bringIn, go } from "./bring-in";
import { beSignedIn, demoPath, expect, type Page, settled, test } from "./fixtures";
import { CHICAGO_OFFICE, fillFields } from "./set-up-building";

const METERS = path.resolve(import.meta.dirname, "../../../shared/data/meter-with-weather");

test.describe("the demo building's meter", () => {
  test.beforeEach(async ({ page }) => beSignedIn(page, "demo"));

  test("says what a kelvin is worth, and its working opens down to the fit and the assumptions", async ({ page }) => {
    await page.goto(demoPath("/energy-meter"));
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("Energy meter");
    await expect(
      page.getByText("What one kelvin (1.8 °F) of cooling setpoint is worth in the weather year"),
    ).toBeVisible();
    await expect(
      page.getByRole("img", { name: /MAIN-METER.KW: energy of a day .* with the fitted line/ }),
    ).toBeVisible();
    const models = page.getByRole("table", { name: /^Models by day type/ });
    await expect(models.getByRole("row", { name: /Occupied days/ })).toContainText("±");
    const figure = page.locator("summary").filter({ hasText: "a year for each kelvin" });
    await figure.click();
    for (const words of ["marginal price of electricity", "energy that one kelvin of cooling setpoint is worth"])
      await expect(page.getByText(words).first()).toBeVisible();
  });

  test("calibrates the headline, with the lower tiers beside it", async ({ page }) => {
    await page.goto(demoPath());
    await expect(page.getByText("calibrated to the meter").first()).toBeVisible();
    for (const tier of ["Tier 2, measured zones, modelled plant", "Tier 1, estimate", "Tier 0, screening"])
      await expect(page.getByText(tier)).toBeVisible();
    // The cost of the first zone's setpoint, its electricity as metered, the factor, the saving, that of occupied days.
    await page.goto(demoPath("/working/setpoint?at=0.0.0.0.0"));
    const terms = page.getByRole("table", { name: /^Terms of saving by the meter, occupied days/ });
    await expect(terms.getByRole("row", { name: /cooling slope/ })).toContainText(
      "4P change-point model of MAIN-METER.KW",
    );
    await page.goto(demoPath("/working/setpoint?at=0.0.0.0.0.2.1"));
    for (const words of [
      "share of the floor area whose cooling setpoint is raised",
      "sensible share of the cooling coil",
    ])
      await expect(page.getByRole("row", { name: new RegExp(words) })).toBeVisible();
  });
});

test("bills of another file that overlap are refused by name, until the bill that is here is taken out", async ({
  page,
}) => {
  await setUp(page, "Bills twice");
  const bring = async (...lines: string[]) => {
    const buffer = Buffer.from(["from,to,energy_kWh", ...lines].join("\n"));
    await bringIn(page, "Electricity bills (CSV)", { name: "bills.csv", mimeType: "text/csv", buffer });
  };
  await bring("2025-01-15,2025-02-14,30000");
  await bring("2025-01-01,2025-01-31,28000");
  const said = page.getByRole("status");
  await expect(said).toContainText("overlap those of the bill of 2025-01-15 to 2025-02-14 (30000 kWh, 31 days)");
  await expect(said).toContainText("remove that bill on the energy meter page");
  await go(page, "Energy meter");
  await page.getByRole("button", { name: "Remove the bill of 2025-01-15" }).click();
  await expect(page.getByText("Bring in the building's electricity meter")).toBeVisible();
  await bring("2025-01-01,2025-01-31,28000");
  await expect(page.getByRole("status")).toContainText("1 bill added, 0 changed, 0 as they were.");
});

test.describe("a meter of one's own", () => {
  test.skip(!existsSync(METERS), "the real meters do not lie beside the repository");

  test("comes in as a trend log, and a month of it is refused with what is missing", async ({ page }) => {
    await setUp(page, "One month of a meter");
    const file = {
      name: "cli_example.csv",
      mimeType: "text/csv",
      buffer: readFileSync(path.join(METERS, "cli_example.csv")),
    };
    await bringMeter(page, file);
    await expectPage(page, "29 of 29 days: no model may be used yet.");
    const findings = page.getByRole("region", { name: "Why there is no figure" });
    await expect(findings).toContainText("29 days");
    await expect(findings).toContainText("328");
    await expect(page.getByRole("img", { name: /with the fitted line/ })).toHaveCount(0);
    await expect(page.getByText("a year for each kelvin")).toHaveCount(0);
  });

  test("of four years has its models, and says why none of them prices a setpoint", async ({ page }) => {
    await setUp(page, "Four years of a meter");
    const buffer = gunzipSync(readFileSync(path.join(METERS, "test_4year.csv.gz")));
    await bringMeter(page, { name: "test_4year.csv", mimeType: "text/csv", buffer });
    await expectPage(
      page,
      "2012-08-12 to 2013-08-11, 361 of 365 days: the model does not say what a setpoint is worth.",
    );
    await expect(page.getByRole("img", { name: /with the fitted line/ })).toBeVisible();
    await expect(page.getByRole("table", { name: "Models tried" }).getByRole("row")).not.toHaveCount(0);
    await expect(page.getByText("a year for each kelvin")).toHaveCount(0);
  });
});

async function setUp(page: Page, name: string): Promise<void> {
  await beSignedIn(page, "empty");
  await page.goto(`${baseUrl("empty")}/buildings/new`);
  await fillFields(page, { ...CHICAGO_OFFICE, Name: name });
  await page.getByRole("button", { name: "Set up the building" }).click();
  await page.waitForURL(/\/buildings\/\d+\/imports$/);
}

/** Brings a file in and leaves out whatever it holds beside the meter and the outdoor air. */
async function bringMeter(page: Page, file: { name: string; mimeType: string; buffer: Buffer }): Promise<void> {
  const building = page.url().replace(/\/imports.*$/, "");
  await bringIn(page, "Trend logs (CSV, or a zip of them)", file);
  await expect(async () => {
    await page.goto(`${building}/imports`);
    await expect(page.getByText(/still being read|waits? to be read/)).toHaveCount(0, { timeout: 1000 });
  }).toPass({ timeout: 60_000 });
  await page.goto(`${building}/imports/mapping?show=open`);
  // What is proposed stays; a point whose name says too little has nothing chosen yet.
  for (const choice of await page.getByLabel(/^What .* is$/).all())
    if ((await choice.inputValue()) === "") await choice.selectOption({ label: "leave it out" });
  await page.getByRole("button", { name: "Confirm and import" }).click();
  await expect(page.getByRole("heading", { name: "Imports", level: 1 })).toBeVisible();
}

async function expectPage(page: Page, words: string): Promise<void> {
  await expect(async () => {
    await go(page, "Energy meter");
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("Energy meter");
    await expect(page.getByText(words)).toBeVisible({ timeout: 3000 });
  }).toPass({ timeout: 30_000 });
  await settled(page);
}
