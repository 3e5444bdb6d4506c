import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { WeekHourHeatMap } from "@/app/_components/charts/week-hour-heat-map";

const week = Array.from({ length: 7 }, () => Array.from({ length: 24 }, () => 1 as number | null));
week[0] = [-2.5, ...Array.from({ length: 23 }, () => null)];

const html = (temperatureUnit: "C" | "F") =>
  renderToStaticMarkup(
    <WeekHourHeatMap label="Zone" differencesK={week} reference="the target" temperatureUnit={temperatureUnit} />,
  );

// A step of 1 K is a step of 1.8 °F, without the 32 of the scale (NIST SP 811, B.8).
describe("a week of differences", () => {
  it("reads in kelvins for a building shown in Celsius", () => {
    expect(html("C")).toContain("\u22122.5</tspan>");
    expect(html("C")).toContain("\u22124\u2009K or colder");
    expect(html("C")).toContain('data-label="Mon" data-unit="K"');
  });

  it("reads in Fahrenheit steps for a building shown in Fahrenheit, in picture, scale and table", () => {
    expect(html("F")).toContain("\u22124.5</tspan>");
    expect(html("F")).toContain("\u22127.2\u2009°F or colder");
    expect(html("F")).toContain("+7.2\u2009°F or warmer");
    expect(html("F")).toContain('data-label="Mon" data-unit="°F"');
    expect(html("F")).not.toContain("K</span>");
  });

  it("has the same colours in both units", () => {
    const fills = (text: string) => text.match(/fill="#[0-9a-f]{6}"/g);
    expect(fills(html("F"))).toEqual(fills(html("C")));
  });
});
