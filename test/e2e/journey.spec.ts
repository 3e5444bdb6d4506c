import path from "node:path";
import { baseUrl } from "../support/servers";
import { accessibilityFaults } from "./accessibility-faults";
import { bringIn, go } from "./bring-in";
import { expect, linksOf, signIn, test, watchConsole } from "./fixtures";
import { compareSettings, refuseImpossibleReadings } from "./measurement-sheet";
import { printedNumber, tableRows, tableTotals } from "./printed";
import {
  hasRealFiles,
  occupiedMean,
  pointExports,
  readingLines,
  weatherWithMissingHours,
  weatherYear,
} from "./real-files";
import { CHICAGO_OFFICE, fillFields, shownFields } from "./set-up-building";

const FIXTURES = path.resolve(import.meta.dirname, "../fixtures/journey");
const REFUSED_EXPORTS = ["RTU11.csv", "S-7_FBD-SP.csv", "VAV-10-DA-T.csv", "VAV-1_DA-T.csv", "VAV-2_DA-T.csv"];

/** Tables of the import pages. */
const HISTORY = { name: "Files brought in, newest first" };
const ROWS = { name: /^Rows by line/ };

test.skip(!hasRealFiles, "the real trend set and weather year do not lie beside the repository");

test("takes a building from nothing to the cost of overcooling on real trend logs", async ({
  page,
  browser,
  consoleErrors,
}) => {
  test.setTimeout(300_000);

  await test.step("signs in to an empty product", async () => {
    await signIn(page, "empty");
    await expect(page.getByRole("heading", { name: "Buildings", level: 1 })).toBeVisible();
    await page
      .getByRole("link", { name: /set up/i })
      .first()
      .click();
    await expect(page.getByRole("heading", { name: "Set up a building" })).toBeVisible();
  });

  await test.step("refuses wrong descriptions of the building in plain words", async () => {
    const wrong = {
      ...CHICAGO_OFFICE,
      Tuesday: "17:00-07:00",
      "Electricity price given is": "blended: the whole bill divided by its kWh",
      "Demand charge": "14",
      "Months in which cooling sets the billed peak": "5",
      "Target zone air temperature, cooling season": "23.0",
    };
    await fillFields(page, wrong);
    await page.getByRole("button", { name: "Set up the building" }).click();
    const summary = page.getByRole("alert").filter({ hasText: /entries|entry|Occupied/ });
    await expect(summary).toContainText("Occupied hours must end after they begin.");
    await expect(summary).toContainText("A blended price already contains the demand charge");
    await expect(summary).toContainText("between 18 and 30 °C (64 and 86 °F)");
    expect(await shownFields(page, Object.keys(wrong)), "what was entered is still there").toEqual(wrong);
  });

  await test.step("sets up the building", async () => {
    await fillFields(page, {
      ...CHICAGO_OFFICE,
      "Demand charge": "",
      "Months in which cooling sets the billed peak": "",
      "Price of heat fuel": "1.10",
      "Unit of the heat price": "therm",
    });
    await page.getByRole("button", { name: "Set up the building" }).click();
    await page.waitForURL(/\/buildings\/\d+\/imports$/);
    await expect(page.getByRole("link", { name: "Lakeside office" })).toBeVisible();
  });
  const buildingUrl = page.url().replace(/\/imports$/, "");

  await test.step("takes zones and desks from tables and rejects a desk of no zone by its line", async () => {
    await bringIn(page, "Zones (CSV)", path.join(FIXTURES, "zones.csv"));
    await expect(page.getByRole("status")).toContainText("4 zones added, 0 changed, 0 as they were.");
    await bringIn(page, "Desks (CSV)", path.join(FIXTURES, "desks.csv"));
    await expect(page.getByRole("status")).toContainText("6 desks added, 0 changed, 0 as they were; 1 row not taken");
    await page.getByRole("link", { name: "desks.csv" }).click();
    const rejected = await tableRows(page.getByRole("table", ROWS));
    expect(rejected).toEqual([
      expect.objectContaining({
        Line: "7",
        Fate: "rejected",
        Row: expect.stringContaining("zone VAV-99 does not exist"),
      }),
    ]);
  });

  await test.step("takes a typed zone and a typed desk", async () => {
    await go(page, "Zones");
    const zone = page.getByRole("group", { name: "Zone", exact: true });
    await zone.getByLabel("Code").fill("S-7");
    await zone.getByLabel("Name").fill("Area of the air handler's sensor");
    await zone.getByLabel("Floor", { exact: false }).first().fill("1");
    await page.getByRole("button", { name: "Add the zone" }).click();
    await expect(page.getByRole("table").getByRole("link", { name: "S-7" })).toBeVisible();
    await page.getByLabel("Desk code").fill("7-01");
    await page.getByLabel("Stands in zone").selectOption({ label: "S-7, Area of the air handler's sensor" });
    await page.getByRole("button", { name: "Add the desk" }).click();
    await expect(page.getByRole("status").filter({ hasText: "The desk is added" })).toBeVisible();
    const zones = await tableRows(page.getByRole("table", { name: "Zones" }));
    expect(Object.fromEntries(zones.map((row) => [row.Zone, row.Desks]))).toEqual({
      "S-7": "1",
      "VAV-1": "2",
      "VAV-2": "2",
      "VAV-5": "1",
      "VAV-10": "1",
    });
  });

  await test.step("refuses a weather year with missing hours, then takes the whole one", async () => {
    await bringIn(page, "Weather year (EPW or TMY3)", weatherWithMissingHours());
    const refusal = page.getByRole("status").filter({ hasText: "with-a-gap.epw was refused" });
    await expect(refusal).toContainText("5 hours are missing");
    await bringIn(page, "Weather year (EPW or TMY3)", weatherYear());
    await expect(page.getByRole("status")).toContainText("is in place");
    await bringIn(page, "Weather year (EPW or TMY3)", weatherYear());
    await expect(page.getByRole("status")).toContainText("in place already");
  });

  await test.step("refuses a text file as trends", async () => {
    await bringIn(page, "Trend logs (CSV, or a zip of them)", path.join(FIXTURES, "minutes-of-a-meeting.txt"));
    const refusal = page.getByRole("status").filter({ hasText: "minutes-of-a-meeting.txt was refused" });
    await expect(refusal).toContainText("this is not a trend export");
  });

  const exports = pointExports();
  const readable = exports.filter((file) => !REFUSED_EXPORTS.includes(file.name));

  await test.step("takes all trend exports in one go and says which hold nothing", async () => {
    await bringIn(page, "Trend logs (CSV, or a zip of them)", exports);
    await expect(
      page
        .getByRole("status")
        .filter({ hasText: `${readable.length} files` })
        .first(),
    ).toBeVisible();
    for (const name of REFUSED_EXPORTS)
      await expect(page.getByRole("status").filter({ hasText: `${name} was refused` })).toBeVisible();
    await expect(page.getByRole("status").filter({ hasText: "S-7_FBD-SP.csv was refused" })).toContainText(
      "There is a heading and nothing under it.",
    );
    await expect(page.getByRole("status").filter({ hasText: "VAV-1_DA-T.csv was refused" })).toContainText(
      'numbers that stand for "no value" (-250)',
    );
    await expect(page.getByRole("status").filter({ hasText: "RTU11.csv was refused" })).toContainText("EST");
    await expect(
      page.getByRole("status").filter({ hasText: `${readable.length} trend files wait for their mapping` }),
    ).toBeVisible();
  });

  await test.step("proposes what each point is and asks for a person's word", async () => {
    await page.getByRole("link", { name: "Map the points" }).click();
    await expect(page.getByRole("heading", { name: "Map the points" })).toBeVisible();
    const proposed = (point: string) =>
      Promise.all(
        [`What ${point} is`, `Zone of ${point}`].map((label) =>
          page
            .getByLabel(label, { exact: true })
            .evaluate((element) => (element as HTMLSelectElement).selectedOptions[0]?.textContent ?? ""),
        ),
      );
    expect(await proposed("VAV-10_ZN-T")).toEqual(["zone air temperature", expect.stringMatching(/^VAV-10\b/)]);
    expect(await proposed("VAV-1_ZN-T")).toEqual(["zone air temperature", expect.stringMatching(/^VAV-1\b/)]);
    expect(await proposed("VAV-10-0CC-O")).toEqual(["occupancy", expect.stringMatching(/^VAV-10\b/)]);
    expect(await proposed("VAV-5-ACTCLGSP")).toEqual(["cooling setpoint", expect.stringMatching(/^VAV-5\b/)]);
    expect((await proposed("VAV-2_RAD-O"))[0]).toBe("leave it out");
    expect((await proposed("S-7_OA-T"))[0]).toBe("outdoor air temperature");
    expect(await accessibilityFaults(page, page.url())).toEqual([]);
    await page.setViewportSize({ width: 1440, height: 900 });
  });

  await test.step("asks again when two points claim one place, then imports what is confirmed", async () => {
    // The radiator's output is no reheat valve, and the occupancy of the air handler is left out.
    await page.getByLabel("What VAV-2_RAD-O is", { exact: true }).selectOption({ label: "reheat valve or output" });
    await page.getByLabel("Zone of VAV-2_RAD-O", { exact: true }).selectOption({ label: "VAV-2, Open office north" });
    await page.getByLabel("What S-7_OCC-C is", { exact: true }).selectOption({ label: "leave it out" });
    await page.getByRole("button", { name: "Confirm and import" }).click();
    await expect(page.getByRole("alert").filter({ hasText: "still open" })).toContainText(
      "VAV-2_HTG-O is already the reheat valve of that zone",
    );
    await page.getByLabel("What VAV-2_RAD-O is", { exact: true }).selectOption({ label: "leave it out" });
    await expect(page.getByLabel("What S-7_OCC-C is", { exact: true })).toHaveValue("skip");
    await page.getByRole("button", { name: "Confirm and import" }).click();
    // The heating setpoints of two boxes lie far below their zones' air, as setback does: looked at, and let pass.
    await expect(page.getByRole("alert").filter({ hasText: "odd" })).toContainText("VAV-2_ACTHTGSP");
    await page.getByLabel("This is right: import it all the same").check();
    await page.getByRole("button", { name: "Confirm and import" }).click();
    await page.waitForURL(/\/imports$/, { timeout: 120_000 });
  });

  await test.step("keeps a history whose rows add up to the files", async () => {
    const history = await tableRows(page.getByRole("table", HISTORY));
    const trends = history.filter((row) => row.Holds === "trends" && row.State === "imported");
    expect(trends).toHaveLength(readable.length);
    for (const row of trends) {
      const rows = printedNumber(row.Rows ?? "");
      expect(printedNumber(row.Taken ?? "") + printedNumber(row["Not taken"] ?? ""), row.File).toBe(rows);
      expect(rows, row.File).toBe(readingLines(row.File ?? "").length);
    }
    const zoneAir = trends.find((row) => row.File === "VAV-1_ZN-T.csv");
    // The set's own description: 8,640 rows, five minutes apart, over 30 days.
    expect(zoneAir).toMatchObject({ Rows: "8,640", Taken: "8,640", Added: "8,640", Changed: "0" });
    expect(history.filter((row) => row.State === "refused").map((row) => row.File)).toEqual(
      expect.arrayContaining([...REFUSED_EXPORTS, "minutes-of-a-meeting.txt", "with-a-gap.epw"]),
    );
  });

  await test.step("changes nothing when the same files come again", async () => {
    const rowsBefore = (await tableRows(page.getByRole("table", HISTORY))).length;
    await bringIn(page, "Trend logs (CSV, or a zip of them)", readable);
    await expect(page.getByRole("status").filter({ hasText: `${readable.length} files` })).toContainText(
      "This very file was imported before: nothing to do.",
    );
    await expect(page.getByText("wait for their mapping")).toHaveCount(0);
    expect((await tableRows(page.getByRole("table", HISTORY))).length).toBe(rowsBefore);
  });

  await test.step("refuses impossible readings of a device in plain words", async () => {
    await go(page, "Devices");
    await refuseImpossibleReadings(page);
  });

  await test.step("shows watts, energy and cost of the settings side by side while they are typed", () =>
    compareSettings(page));

  await test.step("takes devices from a table and rejects one of no zone by its line", async () => {
    await bringIn(page, "Devices (CSV)", path.join(FIXTURES, "devices.csv"));
    await expect(page.getByRole("status")).toContainText("1 device added");
    await page.getByRole("link", { name: "devices.csv" }).click();
    expect(await tableRows(page.getByRole("table", ROWS))).toEqual([
      expect.objectContaining({
        Line: "3",
        Fate: "rejected",
        Row: expect.stringContaining("zone VAV-99 does not exist"),
      }),
    ]);
    await expect(page.getByRole("heading", { name: "What became of it" })).toBeVisible();
    expect(await accessibilityFaults(page, page.url())).toEqual([]);
    await page.setViewportSize({ width: 1440, height: 900 });
    await go(page, "Devices");
    const devices = await tableRows(page.getByRole("table", { name: "Heaters and fans" }));
    expect(devices.map((row) => row.Device)).toEqual(["H-001", "H-050"]);
  });

  await test.step("gives an occupant a link, and takes a report on a phone without an account", async () => {
    await go(page, "Comfort reports");
    await page.getByRole("link", { name: "Links for occupants" }).first().click();
    await page.getByLabel("Zone", { exact: true }).selectOption({ label: "VAV-5, Interior offices" });
    await page.getByLabel("Desk").selectOption({ label: "5-01 (zone VAV-5)" });
    await page.getByRole("button", { name: "Make the link" }).click();
    const address = await page.getByRole("link", { name: /\/report\// }).textContent();
    const phone = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true });
    const occupant = await phone.newPage();
    watchConsole(occupant, consoleErrors);
    await occupant.goto(address ?? "");
    await expect(occupant.getByRole("heading", { level: 1 })).toHaveText("How is the temperature where you sit?");
    // Other languages are all that it leads to.
    for (const href of await linksOf(occupant)) expect(href).toMatch(/^\/report\/[^/]+\?language=(es|fr|de)$/);
    await expect(occupant.getByRole("table")).toHaveCount(0);
    for (const secret of ["Lakeside", "VAV-5", "H-001", "°F"])
      await expect(occupant.locator("body")).not.toContainText(secret);
    await occupant.getByLabel("Cool", { exact: true }).check();
    await occupant.getByLabel("Warmer", { exact: true }).check();
    await occupant.getByText("Add more, if you like").click();
    await occupant.getByLabel("I use a heater").check();
    await occupant.getByLabel("Anything else").fill("Cold feet since ten.");
    await occupant.getByRole("button", { name: "Send" }).click();
    await expect(occupant.getByRole("heading", { level: 1 })).toHaveText("Thank you, your report is in");
    expect(await phone.cookies()).toEqual([]);
    await phone.close();
  });

  await test.step("lists the report", async () => {
    await go(page, "Comfort reports");
    expect(await tableRows(page.getByRole("table", { name: "Comfort reports, newest first" }))).toEqual([
      expect.objectContaining({
        Zone: "VAV-5",
        Desk: "5-01",
        Feels: "Cool (\u22122)",
        "Would like it": "warmer",
        Remarks: "heater in use; \u201cCold feet since ten.\u201d",
      }),
    ]);
  });

  await test.step("opens the building: cost as a range, by component and by zone, and what is cold and why", async () => {
    await go(page, "Overview");
    await expect(page.getByRole("heading", { name: "What overcooling costs" })).toBeVisible();
    await expect(page.getByText(/\$[\d,]+\u2013[\d,]+ a year, most likely \$[\d,]+/).first()).toBeVisible();
    await expect(page.getByText(/^tier \d/)).toBeVisible();
    await expect(page.getByText(/73\.4/).first()).toBeVisible();
    for (const [caption, heading] of [
      [/^Cost of overcooling by component/, "Component"],
      [/^Cost of overcooling by zone/, "Zone"],
    ] as const) {
      const table = page.getByRole("table", { name: caption });
      const rows = await tableRows(table);
      const total = printedNumber((await tableTotals(table))["Of the most likely"] ?? "");
      const sum = rows.reduce((whole, row) => whole + printedNumber(row["Of the most likely"] ?? ""), 0);
      expect(rows.length, String(heading)).toBeGreaterThan(2);
      expect(sum, `rows by ${heading}`).toBe(total);
    }
    const zones = await tableRows(page.getByRole("table", { name: /^Cost of overcooling by zone/ }));
    expect(zones.find((row) => row.Zone === "VAV-5")).toMatchObject({ Heaters: "2" });
    const cold = page.getByRole("list", { name: "Cold zones and their causes" });
    await expect(cold).toContainText(/VAV-5/);
  });

  await test.step("opens a zone: temperature against setpoints, reports and heaters", async () => {
    await go(page, "Zones");
    const zones = await tableRows(page.getByRole("table", { name: "Zones" }));
    for (const code of ["VAV-1", "VAV-10"]) {
      const printed = printedNumber(zones.find((row) => row.Zone === code)?.["Occupied mean"] ?? "");
      const independent = occupiedMean(`${code}_ZN-T.csv`, { month: 5, day: 30 });
      expect(Math.abs(printed - independent), `occupied mean of ${code}`).toBeLessThanOrEqual(0.1);
    }
    await page.getByRole("table").getByRole("link", { name: "VAV-5" }).click();
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("Zone VAV-5, Interior offices");
    await expect(
      page.getByRole("img", { name: /^Zone VAV-5: zone air temperature against its cooling/ }),
    ).toBeVisible();
    await page.getByText("The numbers as a table").first().click();
    const daily = await tableRows(
      page.getByRole("table", { name: "Zone air temperature, setpoints and occupied cooling-season hours by day" }),
    );
    expect(daily).toHaveLength(14);
    expect(daily.at(-1)?.["Cooling setpoint, lowest"]).not.toBe("");
    expect(daily[0]?.["Cooling setpoint, lowest"], "no setpoint is shown where none was recorded").toBe("");
    const devices = await tableRows(page.getByRole("table", { name: "Devices in this zone" }));
    expect(devices.map((row) => row.Device)).toEqual(["H-001", "H-050"]);
    await page.getByRole("link", { name: /^\d+ \w+ \d{4}$|^\w+ \d+, \d{4}$/ }).click();
    const reports = page.getByRole("table", { name: "Comfort reports of the period" });
    await expect(reports).toContainText("Cold feet since ten.");
  });

  expect(new URL(buildingUrl).origin).toBe(baseUrl("empty"));
});
