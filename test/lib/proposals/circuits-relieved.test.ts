import { describe, expect, it } from "vitest";
import { circuitsSentence } from "@/app/buildings/[buildingId]/proposals/circuit-words";
import { ALL_YEAR } from "@/lib/proposals/acting-window";
import { livePicture } from "@/lib/proposals/live/live-picture";
import type { LiveCircuit, LiveCircuitDevice } from "@/lib/proposals/live-circuit";
import { liveBuilding, liveZone } from "@/test/factories/live-building";
import { evaluateFormula } from "../overcooling/evaluate-formula";

const heater = (label: string, currentA: number, changes: Partial<LiveCircuitDevice> = {}): LiveCircuitDevice => ({
  label,
  zoneId: 1,
  isHeater: true,
  currentA,
  isContinuous: true,
  ...changes,
});

/** 20 A at 120 V, planned for 16 A. */
const circuit = (changes: Partial<LiveCircuit> = {}): LiveCircuit => ({
  circuitId: 1,
  name: "2A-14",
  ratingA: 20,
  voltageV: 120,
  limitA: 16,
  continuousFactor: 1.25,
  baseContinuousA: 3,
  baseNonContinuousA: 0,
  unknownLoads: [],
  devices: [heater("H-1", 7), heater("H-2", 7.5)],
  ...changes,
});

const zones = [liveZone(), liveZone({ zoneId: 2, code: "1-02" })];
const reliefOf = (
  circuits: LiveCircuit[],
  amount = 2,
  lever: "cooling-setpoint" | "personal-device" = "cooling-setpoint",
) => livePicture(liveBuilding(zones, { circuits }), [{ zoneId: 1, lever, amount }], ALL_YEAR).circuits ?? [];

describe("circuits of heaters that are expected to go", () => {
  it("are added up by hand: base, and each heater by the share that stays", () => {
    const [found] = reliefOf([circuit()]);
    expect(found?.todayA).toBeCloseTo(17.5, 9);
    expect(found?.allGoneA).toBe(3);
    const gone = (17.5 - (found?.expectedA ?? 0)) / 14.5;
    // The factory's removal fraction is a half, and a part of the cold goes.
    expect(gone).toBeGreaterThan(0);
    expect(gone).toBeLessThanOrEqual(0.5);
    expect(found?.outcome).toBe("below-as-expected");
    const { working } = found ?? {};
    if (!working) throw new Error("a circuit has its working");
    expect(evaluateFormula(working)).toBeCloseTo(working.result.value, 9);
    expect(working.result.value).toBeCloseTo(found?.expectedA ?? 0, 9);
  });

  it("stay above where other loads are too much, and fall only when all go where half is not enough", () => {
    const worse = circuit({ circuitId: 2, name: "2A-16", baseContinuousA: 16.5 });
    const close = circuit({
      circuitId: 3,
      name: "2A-18",
      devices: [heater("H-3", 14.9), heater("H-4", 14.9)],
      ratingA: 20,
    });
    const found = reliefOf([worse, close, circuit()]);
    expect(found.map(({ name, outcome }) => [name, outcome])).toEqual([
      ["2A-14", "below-as-expected"],
      ["2A-18", "below-if-all-go"],
      ["2A-16", "stays-above"],
    ]);
    expect(circuitsSentence(found, "Two kelvin")).toMatch(
      /^Heaters of these zones hang on 3 circuits\. With Two kelvin: 2A-14 falls below the planning limit; 2A-18 only if all of these heaters go; 2A-16 not even then\./,
    );
  });

  it("counts a short run by its share of the planning limit, and what is not a heater or of another zone stays", () => {
    const devices = [
      heater("H-1", 10, { isContinuous: false }),
      heater("F-1", 0.5, { isHeater: false }),
      heater("H-9", 4, { zoneId: 2 }),
    ];
    const [found] = reliefOf([circuit({ devices })]);
    expect(found?.todayA).toBeCloseTo(3 + 8 + 0.5 + 4, 9);
    expect(found?.allGoneA).toBeCloseTo(7.5, 9);
    expect(found?.heaters).toEqual(["H-1"]);
    expect(found?.outcome).toBe("below");
  });

  it("gives no verdict without rating or base load, and leaves out circuits of other zones", () => {
    expect(reliefOf([circuit({ baseContinuousA: null })])[0]?.outcome).toBe("not-known");
    expect(reliefOf([circuit({ ratingA: null, limitA: null })])[0]?.outcome).toBe("not-known");
    expect(reliefOf([circuit({ unknownLoads: ["H-7"] })])[0]?.outcome).toBe("not-known");
    expect(reliefOf([circuit({ devices: [heater("H-9", 9, { zoneId: 2 })] })])).toEqual([]);
  });

  it("puts foot warmers in the place of heaters that are replaced", () => {
    const [found] = reliefOf([circuit()], 100, "personal-device");
    // Two of 10 W at 120 V.
    expect(found?.expectedA).toBeCloseTo(3 + 20 / 120, 9);
  });
});
