import { expect, it } from "vitest";
import {
  ageWords,
  airSpeedOf,
  controlSentence,
  draughtSentence,
  fanLines,
  feltSentence,
  inputLine,
  readingLine,
} from "@/app/buildings/[buildingId]/comfort-reports/[reportId]/view-model";
import { quantityWords } from "@/lib/trends/quantity-words";

const WORDS = quantityWords("C", "America/Chicago");

it("writes readings in the building's units, states as words", () => {
  const reading = { kind: "zone-air-temp", name: "ZN-T", value: 21.54, ageSeconds: 420, hourMean: 21.4 } as const;
  expect(readingLine(reading, WORDS)).toEqual({
    kind: "Zone air",
    point: "ZN-T",
    atReport: "21.5 °C",
    hourMean: "21.4 °C",
    age: "7 min",
  });
  const schedule = { kind: "occupancy", name: "OCC", value: 1, ageSeconds: 0, hourMean: 0.25 } as const;
  expect(readingLine(schedule, quantityWords("F", "America/Chicago"))).toMatchObject({
    atReport: "occupied",
    hourMean: "occupied 25 %",
  });
});

it("writes ages in the unit that is read at a glance", () => {
  expect([0, 5400, 7200, 86_400, 3 * 86_400].map(ageWords)).toEqual(["0 min", "90 min", "2 h", "24 h", "3 days"]);
});

it("says how the controls stood, or that nothing is recorded", () => {
  expect(controlSentence({ control: "unknown", felt: null })).toContain("No zone air is recorded");
  const felt = {
    range: { status: "outside-limits", limits: [] },
    beside: null,
    inputs: [],
    fan: [],
    draught: null,
  } as const;
  expect(
    controlSentence({
      control: "near-cooling",
      felt: { ...felt, range: { ...felt.range, limits: [] }, inputs: [], fan: [] },
    }),
  ).toBe("The zone was held at its cooling setpoint: the setpoint made it so cool.");
});

it("says where a vote lies, with its range", () => {
  const range = {
    status: "ok",
    pmv: { low: -1.24, middle: -0.8, high: 0.31 },
    ppdPct: { low: 5, middle: 18, high: 37 },
  } as const;
  expect(feltSentence({ range, beside: "colder" }, "Cold (\u22123)")).toBe(
    "For these surroundings the standard's method expects votes from \u22121.2 to +0.3, most likely \u22120.8; the vote, Cold (\u22123), lies colder than it: look for a draught, cold surfaces, or one person's need.",
  );
  const limits = [{ what: "air temperature", value: 45, low: 10, high: 40, unit: "°C" }];
  expect(feltSentence({ range: { status: "outside-limits", limits }, beside: null }, "")).toContain(
    "air temperature is outside 10 to 40 °C",
  );
});

it("lists what a predicted vote rests on", () => {
  const input = {
    what: "Clothing with chair",
    spread: { low: 0.4, middle: 0.6, high: 0.85 },
    unit: "clo",
    origin: "assumed",
    source: "a standard",
  } as const;
  expect(inputLine(input, WORDS)).toMatchObject({ value: "0.60 clo", range: "0.40 clo to 0.85 clo" });
  const offset = { ...input, spread: { low: -2, middle: 0, high: 2 }, unit: "K" };
  expect(inputLine(offset, WORDS).range).toBe("\u22122.0 K to 2.0 K");
});

it("says what a fan is worth, and how many feel a draught at a speed that was measured", () => {
  const fan = [{ airSpeedMps: 0.3, lowK: 0.71, highK: 1.26 }];
  expect(fanLines({ fan }, WORDS)).toEqual([{ speed: "0.3", effect: "0.7 K to 1.3 K" }]);
  expect(airSpeedOf(undefined)).toBeNull();
  expect([airSpeedOf("0,2"), airSpeedOf(["0.2", "9"]), airSpeedOf("-1"), airSpeedOf("fast")]).toEqual([
    0.2,
    0.2,
    -1,
    Number.NaN,
  ]);
  expect(draughtSentence({ draught: null }, null, WORDS)).toBe("");
  expect(draughtSentence({ draught: { status: "ok", pct: 22.6, lowPct: 14.2, highPct: 28.1 } }, 0.2, WORDS)).toMatch(
    /^At this speed 23 % .* 14 % if it is steady .* 28 % if it is gusty/,
  );
  const beyond = { status: "outside-limits", what: "air temperature", low: 20, high: 26, unit: "°C" } as const;
  expect(draughtSentence({ draught: beyond }, Number.NaN, WORDS)).toBe("Write the air speed as a number, such as 0.2.");
  expect(draughtSentence({ draught: beyond }, 0.9, WORDS)).toBe(
    "No draught rate: its method holds for an air temperature of 20.0 °C to 26.0 °C.",
  );
});
