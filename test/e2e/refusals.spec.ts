import type { Page } from "@playwright/test";
import { baseUrl } from "../support/servers";
import { beSignedIn, expect, test } from "./fixtures";
import { CHICAGO_OFFICE, fillFields } from "./set-up-building";

test.beforeEach(async ({ page }) => {
  await beSignedIn(page, "empty");
});

const csv = (name: string, text: string) => ({ name, mimeType: "text/csv", buffer: Buffer.from(text) });

async function setUp(page: Page, name: string): Promise<string> {
  await page.goto(`${baseUrl("empty")}/buildings/new`);
  await fillFields(page, { ...CHICAGO_OFFICE, Name: name });
  await page.getByRole("button", { name: "Set up the building" }).click();
  await page.waitForURL(/\/buildings\/\d+\/imports$/);
  return page.url().replace(/\/imports$/, "");
}

async function bringIn(page: Page, building: string, kind: string, file: ReturnType<typeof csv>): Promise<void> {
  await page.goto(`${building}/imports`);
  await page.getByLabel("What the files hold").selectOption({ label: kind });
  await page.getByLabel("Files", { exact: true }).setInputFiles(file);
  await page.getByRole("button", { name: "Bring in" }).click();
  await page.waitForURL(/outcome=/);
}

const said = (page: Page) => page.getByRole("status").first();

test("refuses a building that cannot be, each entry in its own words", async ({ page }) => {
  const cases: { entries: Record<string, string>; words: string }[] = [
    { entries: { Name: "" }, words: "Give the building a name." },
    { entries: { "Time zone": "Central" }, words: "Choose an IANA time zone" },
    { entries: { Monday: "seven to five" }, words: "as hours and minutes" },
    { entries: { Monday: "07:00-12:00, 11:00-17:00" }, words: "must not overlap" },
    { entries: { Holidays: "2022-02-30" }, words: "Give each holiday as YYYY-MM-DD" },
    { entries: { "Conditioned floor area": "-20" }, words: "more than zero" },
    { entries: { "Electricity price": "13 cents" }, words: "as a number" },
    { entries: { Currency: "dollars" }, words: "three letters" },
    { entries: { "Staff time for one complaint": "1" }, words: "go together" },
  ];
  for (const { entries, words } of cases) {
    await page.goto(`${baseUrl("empty")}/buildings/new`);
    await page.getByLabel("Currency").evaluate((element) => element.removeAttribute("maxlength"));
    await fillFields(page, { ...CHICAGO_OFFICE, ...entries });
    await page.getByRole("button", { name: "Set up the building" }).click();
    await expect(page.getByRole("alert").filter({ hasText: words }), JSON.stringify(entries)).toBeVisible();
  }
});

test("refuses tables and files that are something else, and loses nothing that was there", async ({ page }) => {
  const building = await setUp(page, "Refusing office");
  await bringIn(page, building, "Zones (CSV)", csv("zones.csv", "zone,area_ft2\nA-1,900\nA-2,-5\nA-1,800\n"));
  await expect(said(page)).toContainText("1 zone added, 0 changed, 0 as they were; 2 rows not taken");
  await bringIn(page, building, "Zones (CSV)", csv("people.csv", "name,phone\nsomebody,123\n"));
  await expect(said(page)).toContainText("people.csv was refused");
  await bringIn(page, building, "Desks (CSV)", csv("desks.csv", "desk,zone\nD-1,A-1\nD-2,A-9\n"));
  await expect(said(page)).toContainText("1 desk added, 0 changed, 0 as they were; 1 row not taken");
  await bringIn(page, building, "Weather year (EPW or TMY3)", csv("table.csv", "a,b\n1,2\n"));
  await expect(said(page)).toContainText("neither an EPW file");
  for (const [name, text, words] of [
    ["empty.csv", "", "The file is empty"],
    ["page.csv", "<!doctype html><title>Sign in</title>", "This is a web page"],
    ["hashes.csv", "Time,A-1 Zone Temp (F)\n########,72\n########,73\n", "####"],
    ["no-dates.csv", "Time,A-1 Zone Temp (F)\n08:00,72\n08:15,73\n", "no dates"],
  ] as const) {
    await bringIn(page, building, "Trend logs (CSV, or a zip of them)", csv(name, text));
    await expect(said(page)).toContainText(`${name} was refused`);
    await expect(said(page)).toContainText(words);
  }
  await page.goto(`${building}/zones`);
  await expect(page.getByRole("table", { name: "Zones" }).getByRole("rowheader")).toHaveText(["A-1"]);
});

test("refuses devices of places that do not exist and hours that no year has", async ({ page }) => {
  const building = await setUp(page, "Measuring office");
  await bringIn(page, building, "Zones (CSV)", csv("zones.csv", "zone\nA-1\nA-2\n"));
  await bringIn(page, building, "Desks (CSV)", csv("desks.csv", "desk,zone\nD-1,A-1\n"));
  const enter = async (entries: { zone?: string; desk?: string; currentA: string; hours: string; duty?: string }) => {
    await page.goto(`${building}/devices/new?sort=fan-heater-900`);
    await page.getByLabel("Label").fill("H-1");
    if (entries.zone) await page.getByLabel("Zone", { exact: true }).selectOption(entries.zone);
    if (entries.desk) await page.getByLabel("Desk").selectOption(entries.desk);
    const high = page.getByRole("group", { name: "high heat", exact: true });
    await high.getByLabel("Power known by").selectOption({ label: "clamp meter" });
    await high.getByLabel("Current").fill(entries.currentA);
    await high.getByLabel("Selected").fill(entries.hours);
    if (entries.duty) await high.getByLabel("Duty").fill(entries.duty);
    await page.getByRole("button", { name: "Register the device" }).click();
  };
  const refusal = (words: string) => expect(page.getByRole("alert").filter({ hasText: words })).toBeVisible();
  await enter({ currentA: "7.5", hours: "100" });
  await refusal("Say which zone it stands in.");
  await enter({ zone: "A-2", desk: "D-1", currentA: "7.5", hours: "100" });
  await refusal("Desk D-1 does not stand in zone A-2.");
  await enter({ zone: "A-1", currentA: "7.5", hours: "9000" });
  await refusal("A year has 8760 hours");
  await enter({ zone: "A-1", currentA: "7.5", hours: "100", duty: "60" });
  await refusal("For 60 % type 0.6.");
  await enter({ zone: "A-1", currentA: "seven", hours: "100" });
  await refusal("The current is not a number.");
  await enter({ zone: "A-1", desk: "D-1", currentA: "7.5", hours: "100" });
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Device H-1");
  await enter({ zone: "A-1", currentA: "7.5", hours: "100" });
  await refusal("A device labelled H-1 is already on the register");
  await page.goto(`${building}/devices`);
  await expect(page.getByRole("table", { name: "Heaters and fans" }).getByRole("rowheader")).toHaveText(["H-1", "All"]);
});

test("gives no figure for a building of which nothing is known, and says what is missing", async ({ page }) => {
  const building = await setUp(page, "Bare office");
  await page.goto(building);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("What overcooling costs");
  await expect(page.getByRole("list", { name: "Findings" })).toContainText("Nothing is known yet");
  await expect(page.getByText(/most likely/)).toHaveCount(0);
  await expect(page.getByRole("heading", { name: "Next step" })).toBeVisible();
  await page.goto(`${building}/working`);
  await expect(page.getByRole("main")).toContainText("There is no figure yet");
});
