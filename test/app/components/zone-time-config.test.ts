import { describe, expect, it } from "vitest";
import type { ChartTheme } from "@/app/_components/charts/chart-theme";
import type { ZoneSeries } from "@/app/_components/charts/zone-series";
import { temperatureScale, zoneDatasets, zoneTimeConfig } from "@/app/_components/charts/zone-time-config";

const theme: ChartTheme = {
  paper: "#fff",
  ink: "#111",
  inkSoft: "#555",
  rule: "#ccc",
  cold: "#00f",
  warm: "#840",
  comfortBand: "#efe",
  stateCooling: "#345",
  stateReheat: "#789",
  stateDeadband: "#bcd",
  stateUndetermined: "#eee",
  stateFault: "#111",
  fontFamily: "sans",
};

const series: ZoneSeries = {
  timeZone: "Europe/Berlin",
  from: 0,
  to: 86400,
  zoneAir: [
    { t: 0, v: 21.4 },
    { t: 900, v: 20.8 },
    { t: 30000, v: 22.9 },
  ],
  coolingSetpoint: [{ t: 0, v: 22 }],
  heatingSetpoint: [{ t: 0, v: 20 }],
  comfortBand: [
    { t: 0, low: 22.5, high: 25 },
    { t: 86400, low: 22.5, high: 25 },
  ],
  reports: [{ t: 5000, vote: -2 }],
};

describe("a zone's chart", () => {
  it("draws setpoints as steps that hold until the next sample, and zone air as a line", () => {
    const byLabel = new Map(zoneDatasets(series, theme, "C").map((dataset) => [dataset.label, dataset]));
    expect(byLabel.get("cooling")?.stepped).toBe("before");
    expect(byLabel.get("heating")?.stepped).toBe("before");
    expect(byLabel.get("zone air")?.stepped).toBeUndefined();
    expect(byLabel.get("zone air")?.data).toEqual([
      { x: 0, y: 21.4 },
      { x: 900, y: 20.8 },
      { x: 30000, y: 22.9 },
    ]);
  });

  it("keeps the comfort range under every line and fills only between its edges", () => {
    const datasets = zoneDatasets(series, theme, "C");
    const band = datasets.filter((dataset) => dataset.label === "");
    const lines = datasets.filter((dataset) => dataset.label !== "");
    expect(band.map((dataset) => dataset.fill)).toEqual([false, "-1"]);
    expect(Math.min(...band.map((each) => each.order ?? 0))).toBeGreaterThan(
      Math.max(...lines.map((each) => each.order ?? 0)),
    );
  });

  it("breaks the line at a gap longer than stated, and draws what is missing not at all", () => {
    const air = zoneDatasets({ ...series, gapSeconds: 3600 }, theme, "C").find(({ label }) => label === "zone air");
    expect(air?.spanGaps).toBe(3600);
    const bare = zoneDatasets({ timeZone: "UTC", from: 0, to: 1, zoneAir: series.zoneAir }, theme, "C");
    expect(bare.map(({ label }) => label)).toEqual(["zone air"]);
  });

  it("holds all temperatures within the scale, and takes a given scale as it is", () => {
    const scale = temperatureScale(series, "C");
    expect(scale.min).toBeLessThan(20);
    expect(scale.max).toBeGreaterThanOrEqual(25);
    const given = zoneTimeConfig({ ...series, scaleC: { min: 16, max: 30 } }, theme, "C").options?.scales?.y;
    expect([given?.min, given?.max]).toEqual([16, 30]);
  });

  it("draws lines, band, scale and axis in Fahrenheit where the building is shown so", () => {
    const byLabel = new Map(zoneDatasets(series, theme, "F").map((dataset) => [dataset.label, dataset.data]));
    // 20 °C is 68 °F and 22 °C is 71.6 °F: the scale's definition, t/°F = 1.8 t/°C + 32 (NIST SP 811, B.8).
    expect(byLabel.get("heating")).toEqual([{ x: 0, y: 68 }]);
    expect(byLabel.get("cooling")).toEqual([{ x: 0, y: 71.6 }]);
    const scale = temperatureScale(series, "F");
    expect(scale.min).toBeLessThan(68);
    expect(scale.max).toBeGreaterThanOrEqual(77);
    const given = zoneTimeConfig({ ...series, scaleC: { min: 15, max: 30 } }, theme, "F").options?.scales?.y;
    expect([given?.min, given?.max]).toEqual([59, 86]);
  });
});
