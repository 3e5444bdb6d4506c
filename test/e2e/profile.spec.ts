import type { Page } from "@playwright/test";
import { monthlyCsv, ROOM } from "../factories/monthly-file";
import { baseUrl } from "../support/servers";
import { accessibilityFaults } from "./accessibility-faults";
import { beSignedIn, expect, test } from "./fixtures";
import { CHICAGO_OFFICE, fillFields } from "./set-up-building";

async function setUp(page: Page, name: string): Promise<string> {
  await beSignedIn(page, "empty");
  await page.goto(`${baseUrl("empty")}/buildings/new`);
  await fillFields(page, { ...CHICAGO_OFFICE, Name: name });
  await page.getByRole("button", { name: "Set up the building" }).click();
  await page.waitForURL(/\/buildings\/\d+\/imports$/);
  const building = page.url().replace(/\/imports$/, "");
  const zones = Buffer.from("zone\nVAV-2-14\nVAV-2-15\n");
  await bringIn(page, building, "Zones (CSV)", { name: "zones.csv", buffer: zones });
  return building;
}

async function bringIn(
  page: Page,
  building: string,
  kind: string,
  file: { name: string; buffer: Buffer },
): Promise<void> {
  await page.goto(`${building}/imports`);
  await page.getByLabel("What the files hold").selectOption({ label: kind });
  await page.getByLabel("Files", { exact: true }).setInputFiles({ ...file, mimeType: "text/csv" });
  await page.getByRole("button", { name: "Bring in" }).click();
  await page.waitForURL(/outcome=/);
}

const trend = (page: Page, building: string, name: string, bytes: Uint8Array) =>
  bringIn(page, building, "Trend logs (CSV, or a zip of them)", { name, buffer: Buffer.from(bytes) });

/** Tabs on to the control of that name, as someone without a mouse would. */
async function tabTo(page: Page, label: string | RegExp): Promise<void> {
  const target = page
    .getByLabel(label)
    .or(page.getByRole("button", { name: label }))
    .first();
  for (let i = 0; i < 80; i++) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`${label} is not reached by the tab key`);
}

test("a mapping confirmed by keyboard imports the next month without a question, and a changed heading is shown", async ({
  page,
}) => {
  const building = await setUp(page, "Profile office");

  await test.step("asks what the first month leaves open, and keeps what is entered", async () => {
    await trend(page, building, "trend-2026-06.csv", monthlyCsv(6, ROOM));
    await page.getByRole("link", { name: "Map the points" }).click();
    await expect(
      page
        .getByRole("heading", { name: "Question about trend-2026-06.csv" })
        .or(page.getByText("Question about trend-2026-06.csv")),
    ).toBeVisible();
    await expect(page.getByText("first reading 5 Jun 2026, 08:00")).toBeVisible();
    await expect(page.getByText("first reading 6 May 2026, 08:00")).toBeVisible();
    await expect(page.getByLabel("Profile (optional)")).toHaveValue("trend");
    expect(await accessibilityFaults(page, page.url())).toEqual([]);
    await page.setViewportSize({ width: 1440, height: 900 });
    await page.getByRole("button", { name: "Confirm and import" }).click();
    await expect(page.getByRole("alert").filter({ hasText: "still open" })).toContainText("which number is the month");
  });

  await test.step("is confirmed with the keyboard alone", async () => {
    await page.getByLabel("Name contains").focus();
    await tabTo(page, /^month first/);
    await page.keyboard.press("Space");
    await tabTo(page, "Confirm and import");
    await page.keyboard.press("Enter");
    await page.waitForURL(/\/imports$/);
  });

  await test.step("asks nothing of the second month, and says which profile settled it", async () => {
    await trend(page, building, "trend-2026-07.csv", monthlyCsv(7, ROOM));
    await expect(page.getByRole("link", { name: "Map the points" })).toHaveCount(0);
    await page.getByRole("link", { name: "trend-2026-07.csv" }).first().click();
    await expect(page.getByText('Profile "trend", version 1, answered every question.')).toBeVisible();
    await expect(page.getByText("12 added, 0 changed")).toBeVisible();
  });

  await test.step("shows only what a changed heading leaves open, and goes on under the new name", async () => {
    const { "VAV-2-14 ZN-T": air, ...rest } = ROOM;
    await trend(page, building, "trend-2026-08.csv", monthlyCsv(8, { "VAV-2-14 SpaceTemp": air, ...rest }));
    await page.getByRole("link", { name: "Map the points" }).click();
    await expect(page.getByText("VAV-2-14 SpaceTemp is new. VAV-2-14 ZN-T is gone.")).toBeVisible();
    await expect(page.getByLabel("What VAV-2-14 SpaceTemp is")).toHaveValue("zone-air-temp");
    await expect(page.getByLabel("What VAV-2-14 CLG-SP is")).toHaveCount(0);
    await page.getByLabel("is VAV-2-14 ZN-T under a new name").check();
    await page.getByRole("button", { name: "Confirm and import" }).click();
    await page.waitForURL(/\/imports$/);
    await page.getByRole("link", { name: "Profiles" }).click();
    await expect(page.getByText("Version 2, from trend-2026-08.csv")).toBeVisible();
    expect(await accessibilityFaults(page, page.url())).toEqual([]);
  });

  await test.step("asks again once the profile is retired", async () => {
    await page.getByRole("button", { name: "Retire" }).click();
    await expect(page.getByText("Retired", { exact: true })).toBeVisible();
    await trend(page, building, "trend-2026-09.csv", monthlyCsv(9, ROOM));
    await expect(page.getByRole("link", { name: "Map the points" })).toBeVisible();
  });
});

test("rows are set many at once by a range, and taken back", async ({ page }) => {
  const building = await setUp(page, "Bulk office");
  const columns = Object.fromEntries(Array.from({ length: 8 }, (_, i) => [`Loop ${i + 1}`, [1, 2, 3, 4, 5, 6]]));
  await trend(page, building, "loops-2026-06.csv", monthlyCsv(6, columns));
  await page.goto(`${building}/imports/mapping`);
  const what = (i: number) => page.getByLabel(`What Loop ${i} is`);
  await page.getByLabel("Select Loop 2", { exact: true }).click();
  await page.getByLabel("Select Loop 5", { exact: true }).click({ modifiers: ["Shift"] });
  await page.getByLabel("Set selected to").selectOption({ label: "leave it out" });
  await what(8).selectOption({ label: "airflow" });
  await page.getByRole("button", { name: "Set", exact: true }).click();
  await expect(page.getByRole("button", { name: "Take back: 4 rows: set to leave it out" })).toBeVisible();
  for (const i of [2, 3, 4, 5]) await expect(what(i)).toHaveValue("skip");
  for (const i of [1, 6, 7]) await expect(what(i)).toHaveValue("");
  await page.getByRole("button", { name: "Take back" }).click();
  await expect(page.getByRole("button", { name: "Take back" })).toHaveCount(0);
  await expect(what(3)).toHaveValue("");
  await expect(what(8)).toHaveValue("airflow");
  await page.getByLabel("Show", { exact: true }).selectOption({ label: "only open ones" });
  await page.getByLabel("Name contains").press("Enter");
  await page.waitForURL(/show=open/);
  await expect(what(8)).toHaveCount(0);
  await expect(page.getByText("7 of 8 points")).toBeVisible();
});

test.describe("without script", () => {
  test.use({ javaScriptEnabled: false });

  test("rows are entered, kept and refused with everything still there", async ({ page }) => {
    const building = await setUp(page, "Plain office");
    await trend(page, building, "plain-2026-06.csv", monthlyCsv(6, { ...ROOM, "Loop 1": [1, 2, 3, 4, 5, 6] }));
    await page.goto(`${building}/imports/mapping`);
    await page.getByLabel("What VAV-2-14 CLG-SP is").selectOption({ label: "heating setpoint" });
    await page.getByLabel(/^month first/).check();
    await page.getByRole("button", { name: "Confirm and import" }).click();
    await expect(page.getByRole("alert").filter({ hasText: "still open" })).toContainText("Loop 1: say what it is");
    await expect(page.getByLabel("What VAV-2-14 CLG-SP is")).toHaveValue("heating-setpoint");
    await expect(page.getByLabel(/^month first/)).toBeChecked();
    await page.getByLabel("What Loop 1 is").selectOption({ label: "leave it out this time, ask again" });
    await page.getByRole("button", { name: "Confirm and import" }).click();
    await page.waitForURL(/\/imports$/);
    await page.goto(`${building}/imports/profiles`);
    await expect(page.getByText("2, and 1 left out")).toBeVisible();
  });
});
