import { describe, expect, it } from "vitest";
import { TEMPERATURE_GUIDANCE, type TemperatureGuidance } from "@/lib/comfort-reports/temperature-guidance";
import { celsiusFromFahrenheit, fahrenheitFromCelsius, kelvinFromFahrenheitDifference } from "@/lib/units/temperature";
import { compareWithCase, loadCheckValues } from "../../support/check-values";

const IDS: Record<string, string> = {
  "OSHA recommended office range": "us-osha",
  "width of the OSHA range as a difference": "us-osha",
  "UK workroom normal minimum": "uk",
  "US federal space, heating outside working hours": "us-federal",
  "ISO 7730 category A, office": "iso-7730-a",
  "ISO 7730 category B, office": "iso-7730-b",
  "ISO 7730 category C, office": "iso-7730-c",
  "EN 15251 / 16798-1 category I, office": "en-16798-i",
  "EN 15251 / 16798-1 category II, office": "en-16798-ii",
  "EN 15251 / 16798-1 category III, office": "en-16798-iii",
  "Japan office ordinance": "japan",
  "Japan Cool Biz": "japan-cool-biz",
  "Germany ASR A3.5 office": "germany",
  "France offices": "france",
  "Spain 2022-2023 measure": "spain-2022",
  "Italy 2022-2023 measure": "italy-2022",
  "WHO minimum indoor": "who",
};

/** Every figure in both scales, and what is said of the guidance itself. */
function valuesOf(guidance: TemperatureGuidance): Record<string, number | string | boolean> {
  const values: Record<string, unknown> = {};
  for (const { key, value, unit } of guidance.figures) {
    values[key] = value;
    if (unit === "°C") values[key.replace(/C$/, "F")] = fahrenheitFromCelsius(value);
    if (unit === "°F") values[key.replace(/F$/, "C")] = celsiusFromFahrenheit(value);
  }
  for (const { key } of guidance.absent ?? []) values[key] = null;
  values.widthK = kelvinFromFahrenheitDifference(Number(values.highF) - Number(values.lowF));
  const { binding, expired = false, inForceFrom = "" } = guidance;
  return { ...values, binding: binding ?? "by adoption", expired, inForceFrom } as ReturnType<typeof valuesOf>;
}

describe("published temperature guidance", () => {
  for (const check of loadCheckValues<object>("comfort-reports/temperature-guidance").cases)
    it(check.name, () => {
      const guidance = TEMPERATURE_GUIDANCE.find(({ id }) => id === IDS[check.name]);
      if (!guidance) throw new Error(`no guidance for ${check.name}`);
      compareWithCase(check, valuesOf(guidance));
    });

  it("is checked row by row, and names a source for each", () => {
    expect(new Set(Object.values(IDS))).toEqual(new Set(TEMPERATURE_GUIDANCE.map(({ id }) => id)));
    for (const { source, id } of TEMPERATURE_GUIDANCE) expect(source.length, id).toBeGreaterThan(10);
  });
});
