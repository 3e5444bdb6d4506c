import { describe, expect, it } from "vitest";
import { assessCircuit, type CircuitDevice, type CircuitInput } from "@/lib/electrical/circuit/assess-circuit";
import { circuitFindingText } from "@/lib/electrical/circuit/circuit-findings";
import { deviceLoad, type LoadDevice } from "@/lib/electrical/circuit/device-load";
import { reliefOf } from "@/lib/electrical/circuit/relief";
import { deviceClassById } from "@/lib/electrical/device-classes";

const heater = (powerW: number, voltageV: number, changes: Partial<CircuitDevice> = {}): CircuitDevice => ({
  name: `${powerW} W`,
  nameplateA: powerW / voltageV,
  states: { off: 0, high: powerW / voltageV },
  ...changes,
});

const us = (breakerRatingA: number, devices: CircuitDevice[], baseContinuousA: number | null = 0): CircuitInput => ({
  code: "nec-2023",
  breakerRatingA,
  voltageV: 120,
  multiOutlet: true,
  baseContinuousA,
  baseNonContinuousA: baseContinuousA === null ? null : 0,
  devices,
});

const uk = (breakerRatingA: number, devices: CircuitDevice[]): CircuitInput => ({
  ...us(breakerRatingA, devices),
  code: "iec-uk-2018",
  voltageV: 230,
});

const codesOf = (input: CircuitInput) => assessCircuit(input).findings.map(({ code }) => code);

// BS 1363-2: 20 A on both halves of a twin socket; BS 1362: 13 A fuse carries 1.6 times, opens by 1.9 times (second hand).
describe("outlets of a British circuit", () => {
  const twin = { outlet: { kind: "twin-socket" as const, label: "S4" } };
  const lead = { outlet: { kind: "extension-lead" as const, label: "L1" } };

  it("says of two 3 kW heaters on one twin socket that both halves are too much for it, the ring within its rating", () => {
    const input = uk(32, [heater(3000, 230, twin), heater(3000, 230, twin)]);
    expect(assessCircuit(input)).toMatchObject({ status: "ok", verdict: "within-limits" });
    expect(codesOf(input)).toEqual(["twin-socket-over-limit"]);
    const apart = [heater(3000, 230, twin), heater(3000, 230, { outlet: { kind: "twin-socket", label: "S5" } })];
    expect(codesOf(uk(32, apart))).toEqual([]);
    expect(codesOf(uk(32, [heater(2000, 230, twin), heater(2000, 230, twin)]))).toEqual([]);
  });

  it("says of two 2 kW heaters on one lead that the fuse does not open and the lead overheats", () => {
    const input = uk(20, [heater(2000, 230, lead), heater(2000, 230, lead)]);
    const [finding] = assessCircuit(input).findings;
    expect(finding).toMatchObject({ code: "lead-over-fuse", evidence: { fuseBand: "carries-at-least-30-min" } });
    expect(finding && circuitFindingText(finding)).toContain("The fuse does not open, but the lead overheats.");
  });

  it("knows no twin sockets and no plug fuses in the United States", () => {
    expect(codesOf(us(20, [heater(1500, 120, lead), heater(1500, 120, lead)]))).toEqual([]);
  });
});

describe("what is not known of a circuit", () => {
  it.each([
    ["the rating", { breakerRatingA: null }, "breaker rating"],
    ["the voltage", { voltageV: null }, "voltage"],
    ["the base load", { baseContinuousA: null }, "base load"],
  ])("keeps it from being called within limits: %s", (_, unknown, missing) => {
    const circuit = assessCircuit({ ...us(20, [heater(900, 120)]), ...unknown });
    expect(circuit).toMatchObject({ status: "not-established", missing: [missing] });
  });

  it("lets stand what the devices alone exceed, the share of one item included", () => {
    expect(assessCircuit(us(15, [heater(1500, 120, { continuous: false })], null))).toMatchObject({
      status: "ok",
      verdict: "over-single-item-share",
      missing: ["base load"],
    });
  });

  it("is said of outlets that nobody traced, neutrals that nobody looked at, and trips that were told of", () => {
    const input = { ...us(20, [heater(900, 120, { mapping: "assumed" })]), sharedNeutral: null, tripNote: "in May" };
    expect(codesOf(input)).toEqual(["circuit-not-traced", "shared-neutral-unknown", "has-tripped"]);
    expect(codesOf({ ...us(20, [heater(900, 120)]), leg: "A-B" })).toEqual(["leg-unbalanced"]);
  });
});

describe("coming back under the limit", () => {
  it("names the fewest devices, those that take least first", () => {
    const input = us(20, [heater(1500, 120), heater(900, 120)], 3);
    const relief = reliefOf(input);
    expect(relief.map(({ leaving }) => leaving)).toEqual([[1], [0]]);
    for (const { after } of relief) expect(after).toMatchObject({ status: "ok", verdict: "within-limits" });
  });

  it("takes two together where one is not enough", () => {
    expect(
      reliefOf(us(20, [heater(1500, 120), heater(1500, 120), heater(1500, 120)])).map((each) => each.leaving),
    ).toEqual([
      [0, 1],
      [0, 2],
      [1, 2],
    ]);
  });

  it("names none where nothing is exceeded, and none where the rest of the circuit is too much by itself", () => {
    expect(reliefOf(us(20, [heater(900, 120)]))).toEqual([]);
    expect(reliefOf(us(20, [heater(900, 120)], 18))).toEqual([]);
  });
});

describe("load of a device", () => {
  const device = (changes: Partial<LoadDevice>): LoadDevice => ({
    kind: "space-heater",
    deviceClass: deviceClassById("fan-heater-1500"),
    nameplateW: 1500,
    nameplateA: null,
    nameplateVoltageV: 120,
    settings: [],
    ...changes,
  });
  const clamp = (name: string, currentA: number, voltageV = 120) => ({
    name,
    basis: "clamp" as const,
    currentA,
    voltageV,
    voltageMeasured: true,
    powerFactor: null,
    powerW: null,
    nameplateW: null,
  });

  it("is the reading at the highest setting, scaled up to the nominal voltage and never down", () => {
    expect(deviceLoad(device({ settings: [clamp("high-heat", 11.8, 114)] }), 120)).toMatchObject({
      basis: "measured",
      currentA: expect.closeTo(12.4211, 4),
    });
    expect(deviceLoad(device({ settings: [clamp("high-heat", 11.8, 124)] }), 120)).toMatchObject({ currentA: 11.8 });
  });

  it("is the label where only a lower setting was measured", () => {
    expect(deviceLoad(device({ settings: [clamp("low-heat", 6.2)] }), 120)).toMatchObject({
      basis: "nameplate",
      currentA: 12.5,
    });
  });

  it("leaves aside a reading that is next to nothing beside the label", () => {
    expect(deviceLoad(device({ settings: [clamp("high-heat", 0.02)] }), 120)).toMatchObject({
      basis: "nameplate",
      currentA: 12.5,
      readingNotTrusted: true,
    });
  });

  it("follows the circuit's voltage: 3000 W at 240 V draws 10.83 A at 208 V", () => {
    expect(deviceLoad(device({ nameplateW: 3000, nameplateVoltageV: 240 }), 208)).toMatchObject({
      currentA: expect.closeTo(10.8333, 4),
    });
  });

  it("takes a fan's amperes and not its watts: at the lowest power factor of its sort where none was read", () => {
    const fan = device({ kind: "personal-fan", deviceClass: deviceClassById("desk-fan-small"), nameplateW: 36 });
    expect(deviceLoad(fan, 120)).toMatchObject({ basis: "nameplate", currentA: 1 });
  });
});
