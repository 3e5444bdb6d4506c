import { registerDevice } from "@/lib/services/devices/register";
import { fillRegister } from "../bench/data/large-register";
import { beSignedIn, expect, test } from "./fixtures";
import { printedNumber, tableRows } from "./printed";
import { type RegisterBuilding, registerBuilding } from "./register-building";

let made: RegisterBuilding;
let deviceId: number;

test.beforeAll(() => {
  made = registerBuilding("Register of many");
  fillRegister(made.ctx.db, made.id, [made.zoneId], 5000);
  deviceId = registerDevice(made.ctx, made.id, {
    label: "H-900",
    kind: "space-heater",
    deviceClass: "fan-heater-1500",
    zoneCode: "1-01",
    foundOn: "2026-01-20",
    nameplateW: 1500,
    nameplateVoltageV: 120,
    ownerContact: "ext. 4711",
    settings: [
      {
        name: "low-heat",
        basis: "clamp",
        rawReadingA: 6.2,
        currentResolutionA: 0.01,
        voltageV: 118,
        voltageMeasured: true,
        hoursPerYear: 100,
      },
      {
        name: "high-heat",
        basis: "clamp",
        rawReadingA: 12.1,
        currentResolutionA: 0.01,
        voltageV: 118,
        voltageMeasured: true,
        hoursPerYear: 50,
      },
    ],
  });
});
test.afterAll(() => made.remove());

test("sends a register of 5,000 devices in parts of less than 200 kB, with totals of all", async ({ page }) => {
  await beSignedIn(page, "demo");
  const session = await page.context().newCDPSession(page);
  await session.send("Network.enable");
  let bytes = 0;
  session.on("Network.loadingFinished", ({ encodedDataLength }) => {
    bytes += encodedDataLength;
  });
  // What belongs to the site and not to the register is there from another page.
  await page.goto(made.address("/devices/circuits"));
  bytes = 0;
  await page.goto(made.address("/devices?sort=cost&order=down&status=all"));
  const table = page.getByRole("table", { name: "Heaters and fans" });
  await expect(table).toBeVisible();
  await page.waitForLoadState("networkidle");
  expect(bytes).toBeGreaterThan(5_000);
  expect(bytes).toBeLessThan(200_000);
  const costs = (await tableRows(table)).map((row) => printedNumber(row["Cost a year"] ?? ""));
  expect(costs.length).toBeGreaterThanOrEqual(100);
  for (let i = 1; i < 100; i++) expect(costs[i]).toBeLessThanOrEqual(costs[i - 1] as number);
  await expect(page.getByText("1 to 100 of 5001 devices")).toBeVisible();
});

test("filters and groups, and its totals follow", async ({ page }) => {
  await beSignedIn(page, "demo");
  await page.goto(made.address("/devices"));
  await page.getByLabel("Words").fill("h-900");
  await page.getByLabel("Grouped by").selectOption("class");
  await page.getByRole("button", { name: "Show", exact: true }).click();
  const table = page.getByRole("table", { name: "Heaters and fans" });
  await expect(table.getByRole("rowheader")).toHaveText(["H-900", "All"]);
  // By hand: 118 V × 6.2 A × 100 h and 118 V × 12.1 A × 50 h are 73.16 and 71.39 kWh.
  await expect(table).toContainText("144.6");
  const groups = page.getByRole("table", { name: "By sort of device" });
  await expect(groups).toContainText("144.6");
  await page.getByText("How the total comes about").click();
  await expect(page.getByText("K = E × p").or(page.getByText("electricity price")).first()).toBeVisible();
  await expect(page.getByText("1 × fan-forced heater (ceramic or wire), 1500 W: sum of their sheets")).toBeAttached();
});

test("adds and takes out settings without script, loses nothing typed, and shows figures without saving", async ({
  browser,
}) => {
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await beSignedIn(page, "demo");
  await page.goto(made.address(`/devices/${deviceId}`));
  const sheet = page.getByRole("table", { name: "What each setting draws and costs" });
  await expect(sheet.getByRole("rowheader")).toHaveText(["low heat", "high heat", "All settings"]);
  await page.getByRole("group", { name: "low heat", exact: true }).getByLabel("Current").fill("6.5");
  await page.getByLabel("A further setting").selectOption({ label: "fan only" });
  await page.getByRole("button", { name: "Add the setting" }).click();
  await expect(sheet.getByRole("rowheader")).toHaveText(["low heat", "high heat", "fan only", "All settings"]);
  // By hand: 118 V × 6.5 A.
  await expect(sheet).toContainText("767.0");
  const fan = page.getByRole("group", { name: "fan only", exact: true });
  await fan.getByText("Meter, supply and use").click();
  await fan.getByRole("button", { name: "Take this setting out" }).click();
  await expect(sheet.getByRole("rowheader")).toHaveText(["low heat", "high heat", "All settings"]);
  await expect(page.getByRole("group", { name: "low heat", exact: true }).getByLabel("Current")).toHaveValue("6.5");
  await page.goto(made.address(`/devices/${deviceId}`));
  await expect(sheet, "nothing was saved").toContainText("731.6");
  await context.close();
});

test("works out hours of a schedule and the turns of a loop as they are typed", async ({ page }) => {
  await beSignedIn(page, "demo");
  await page.goto(made.address(`/devices/${deviceId}`));
  const low = page.getByRole("group", { name: "low heat", exact: true });
  await low.getByLabel("Current").fill("62");
  await low.getByLabel("Turns").selectOption("10");
  await low.getByText("Meter, supply and use").click();
  await low.getByLabel("Hours known by").selectOption("schedule");
  await low.getByLabel("Hours a day").fill("2");
  await low.getByLabel("Days a year").fill("60");
  const sheet = page.getByRole("table", { name: "What each setting draws and costs" });
  // By hand: 62 A over 10 turns at 118 V is 731.6 W; 2 h on 60 days are 120 h, 87.8 kWh.
  await expect(sheet).toContainText("731.6");
  await expect(sheet).toContainText("120 (schedule)");
  await expect(sheet).toContainText("87.8");
  await low.getByLabel("Turns").selectOption("1");
  await expect(page.getByRole("list", { name: "What the sheet says of these readings" })).toContainText(
    "62 A is more than any outlet carries",
  );
});

test("inspects, refuses an approval while something is open, and lets a device go and come back", async ({
  browser,
}) => {
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await beSignedIn(page, "demo");
  await page.goto(made.address(`/devices/${deviceId}/inspection`));
  const cord = page.getByRole("group", { name: "Cord, plug, guard or case damaged, changed, or mended with tape" });
  await cord.getByLabel("found so").check();
  await cord.getByLabel("What was found").fill("tape on the cord");
  await page.getByRole("button", { name: "Keep the inspection" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Device H-900");
  await expect(page.getByRole("alert").filter({ hasText: "Take it out of use now: unplug it" })).toBeVisible();
  await expect(page.getByRole("table", { name: "Found at fault and still open" })).toContainText("tape on the cord");

  await page.getByLabel("Becomes").selectOption("approved-to-remain");
  await page.getByRole("button", { name: "Keep the step" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "approval waives no safety item" })).toBeVisible();
  await page.getByLabel("How", { exact: true }).or(page.getByLabel("How (optional)")).first().fill("new cord");
  await page.getByRole("button", { name: "It was put right" }).click();
  await expect(page.getByText("Nothing is open.")).toBeVisible();
  await page.getByLabel("Becomes").selectOption("removed");
  await page.getByRole("button", { name: "Keep the step" }).click();
  await expect(page.getByRole("table", { name: "Steps so far" })).toContainText("removed");
  await expect(page.getByLabel("Contact of its owner")).toHaveValue("");
  await page.getByLabel("Becomes").selectOption("returned");
  await page.getByRole("button", { name: "Keep the step" }).click();
  await expect(page.getByRole("table", { name: "Steps so far" })).toContainText("returned at re-survey");
  await context.close();
});
