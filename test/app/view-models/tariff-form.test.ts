import { expect, test } from "vitest";
import { formFromTariff, lineErrors, placesIn, tariffInputFromForm } from "@/app/buildings/[buildingId]/tariff/form";
import { tariffInput } from "@/lib/services/tariffs/tariff-input";

const DAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];

test("reads lines as a price sheet has them, and writes them back the same", () => {
  const values = {
    energyKind: "time-of-use",
    periods: "On-peak; 0.165; Jun, Jul, Aug, Sep; Mon, Tue, Wed, Thu, Fri; 12:00-18:00\nNight; 0,062; all; all; all",
    blocks: "20,000; 0.11\nabove; 0.095",
    bills: Array.from({ length: 12 }, (_, k) => `${90_000 + k}; ${300 + k}`).join("\n"),
    ratchetPct: "80",
  };
  const input = tariffInputFromForm(values);
  expect(input.periods[0]).toEqual({
    name: "On-peak",
    pricePerKwh: 0.165,
    months: [6, 7, 8, 9],
    weekdays: [1, 2, 3, 4, 5],
    startMinute: 720,
    endMinute: 1080,
  });
  expect(input.periods[1]).toMatchObject({ pricePerKwh: 0.062, startMinute: 0, endMinute: 1440 });
  expect(input.blocks).toEqual([
    { upToKwh: 20_000, pricePerKwh: 0.11 },
    { upToKwh: null, pricePerKwh: 0.095 },
  ]);
  expect(input.bills?.[11]).toEqual({ energyKwh: 90_011, demandKw: 311 });
  expect(input.ratchetFraction).toBe(0.8);
  const row = { ...input, bills: input.bills, buildingId: 1, enteredBy: "", enteredAtMs: 0 };
  expect(tariffInputFromForm(formFromTariff(row as Parameters<typeof formFromTariff>[0]))).toEqual(input);
});

test.each([
  ["Mon-Fri", [1, 2, 3, 4, 5]],
  ["sat, Sunday", [6, 7]],
  ["Fri-Mon", [1, 5, 6, 7]],
  ["all", [1, 2, 3, 4, 5, 6, 7]],
  ["Mon-Frei, x", []],
])("reads days %s", (text, days) => {
  expect(placesIn(text, DAYS)).toEqual(days);
});

test("names the line at fault", () => {
  expect(lineErrors({ "periods.2.months": "give months such as Jun-Sep, or all." }, "periods")).toEqual([
    "Line 3: give months such as Jun-Sep, or all.",
  ]);
  expect(lineErrors({ bills: "Give twelve months." }, "bills")).toEqual(["Give twelve months."]);
  expect(lineErrors({}, "bills")).toEqual([]);
});

test("says a line at fault once, with all that is wrong in it", () => {
  const values = {
    energyKind: "time-of-use",
    periods: "On-peak; 0.165; all; all; all\n; x; ; ; 9",
    blocks: "",
    bills: "",
  };
  const read = tariffInput.safeParse(tariffInputFromForm(values));
  const issues = Object.fromEntries((read.error?.issues ?? []).map((each) => [each.path.join("."), each.message]));
  expect(Object.keys(issues).length).toBeGreaterThan(3);
  const said = lineErrors(issues, "periods");
  expect(said).toHaveLength(1);
  expect(said[0]).toMatch(/^Line 2: the period needs a name; the price is no number; give months .*; give hours .*\.$/);
});
