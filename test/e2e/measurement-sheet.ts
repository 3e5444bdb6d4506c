import type { Page } from "@playwright/test";
import { expect } from "./fixtures";
import { printedNumber, tableRows } from "./printed";

/** Types readings that cannot be into a new heater's sheet and reads what the sheet says of them. */
export async function refuseImpossibleReadings(page: Page): Promise<void> {
  await page.getByRole("link", { name: "Register a device" }).first().click();
  await page
    .getByLabel("Sort of device")
    .selectOption({ label: "Heater: fan-forced heater (ceramic or wire), 1500 W" });
  await page.getByRole("button", { name: "Show its settings" }).click();
  await page.getByLabel("Label").fill("H-001");
  await page.getByLabel("Zone", { exact: true }).selectOption({ label: "VAV-5, Interior offices" });
  await page.getByLabel("Desk").selectOption({ label: "5-01 (zone VAV-5)" });
  for (const [setting, currentA] of [
    ["off", "0"],
    ["fan only", "-0.24"],
    ["low heat", "1500"],
    ["high heat", "11.44"],
  ] as const) {
    const entry = page.getByRole("group", { name: setting, exact: true });
    await entry.getByLabel("Power known by").selectOption({ label: "clamp meter" });
    await entry.getByLabel("Current").fill(currentA);
    await entry.getByLabel("Meter's last digit").fill("0.01");
    await entry.getByLabel("Voltage").fill("120");
    await entry.getByLabel("Selected").fill(setting === "off" ? "0" : "2000");
  }
  await page.getByRole("button", { name: "Register the device" }).click();
  const summary = page.getByRole("alert").filter({ hasText: "another look" });
  await expect(summary).toContainText("A current cannot be negative; -0.24 A was typed.");
  await expect(summary).toContainText("1500 A is more than any outlet carries; was this watts, or 15.00 A?");
}

/** Corrects the readings and compares the settings, while they are typed and once the device is registered. */
export async function compareSettings(page: Page): Promise<void> {
  await page.getByRole("group", { name: "fan only", exact: true }).getByLabel("Current").fill("0.24");
  await page.getByRole("group", { name: "low heat", exact: true }).getByLabel("Current").fill("8.98");
  const sheet = page.getByRole("table", { name: "What each setting draws and costs" });
  // Measured settings of common practice, no source: 0.24, 8.98 and 11.44 A at 120 V, 2,000 h, 0.13 per kWh.
  const expected = [
    { setting: "fan only", powerW: 28.8, energyKwh: 57.6, cost: 7.49, bound: true },
    { setting: "low heat", powerW: 1077.6, energyKwh: 2155, cost: 280, bound: false },
    { setting: "high heat", powerW: 1372.8, energyKwh: 2746, cost: 357, bound: false },
  ];
  await expect(sheet).toContainText("1,077.6");
  const check = async () => {
    const rows = await tableRows(sheet);
    for (const { setting, powerW, energyKwh, cost, bound } of expected) {
      const row = rows.find((each) => each.Setting === setting) ?? {};
      expect(printedNumber(row.Power ?? ""), `power of ${setting}`).toBeCloseTo(powerW, 1);
      expect(Math.abs(printedNumber(row["Energy a year"] ?? "") - energyKwh)).toBeLessThanOrEqual(0.5);
      expect(Math.abs(printedNumber(row["Cost a year"] ?? "") - cost)).toBeLessThanOrEqual(cost < 10 ? 0.005 : 0.5);
      expect((row.Power ?? "").includes("\u2264"), `${setting} marked as an upper bound`).toBe(bound);
    }
  };
  await check();
  await expect(page.getByRole("list", { name: "What the sheet says of these readings" })).toContainText(
    "Upper bound: a motor's power factor is below 1",
  );
  await page.getByRole("button", { name: "Register the device" }).click();
  await expect(page.getByRole("heading", { name: "Device H-001" })).toBeVisible();
  await check();
}
