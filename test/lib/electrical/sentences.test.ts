import { describe, expect, it } from "vitest";
import { CAUTIONS, cautionsFor } from "@/lib/electrical/cautions";
import { settingLoad } from "@/lib/electrical/device-kind";

describe("cautions", () => {
  it("each have a source and an id of their own", () => {
    expect(new Set(CAUTIONS.map((each) => each.id)).size).toBe(CAUTIONS.length);
    for (const each of CAUTIONS) expect(each.source.length).toBeGreaterThan(10);
  });

  it("name what people who measure must not do, and what heaters must be kept from", () => {
    const measuring = cautionsFor("measuring")
      .map((each) => each.text)
      .join(" ");
    expect(measuring).toMatch(/open a panel/);
    expect(measuring).toMatch(/line splitter/);
    expect(measuring).toMatch(/licensed electrician/);
    const heaters = cautionsFor("heater-in-use")
      .map((each) => each.text)
      .join(" ");
    expect(heaters).toMatch(/paper/);
    expect(heaters).toMatch(/extension lead/);
    expect(heaters).toMatch(/unattended/);
  });
});

describe("what a setting draws its current for", () => {
  it.each([
    ["space-heater", "high-heat", "element"],
    ["space-heater", "fan-only", "motor"],
    ["space-heater", "Fan only", "motor"],
    ["space-heater", "fan heat", "element"],
    ["space-heater", "off", "motor"],
    ["personal-fan", "high-speed", "motor"],
    ["personal-fan", "turbo", "motor"],
  ] as const)("%s at %s is a %s", (kind, settingName, load) => {
    expect(settingLoad(kind, settingName)).toBe(load);
  });
});
