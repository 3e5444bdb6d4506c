import { describe, expect, it } from "vitest";
import { readDevice, readDevices } from "@/lib/services/devices/read";
import { registerDevice, retireDevice, reviseDevice } from "@/lib/services/devices/register";
import { heaterInput, settingInput, smallOffice } from "@/test/factories/office";
import { refusalOf } from "@/test/support/refusal";

describe("registering a device", () => {
  it("keeps its place and its readings, and works them out at the building's price", () => {
    const { ctx, buildingId } = smallOffice({ electricityPricePerKwh: 0.13 });
    const id = registerDevice(
      ctx,
      buildingId,
      heaterInput({ settings: [settingInput({ hoursPerYear: 2000, powerFactor: 1 })] }),
    );
    const device = readDevice(ctx, buildingId, id);
    expect(device).toMatchObject({ zoneCode: "2-14", deskCode: "2-14-01", retiredOn: null });
    const [line] = device.sheet.lines;
    if (line?.power.status !== "ok") throw new Error("no power");
    // 11.44 A at 120 V, 2,000 h a year, 0.13 per kWh: by hand 1372.8 W, 2745.6 kWh, 356.93.
    expect(line.power.powerW.value).toBeCloseTo(1372.8, 9);
    expect(line.energyKwh?.value).toBeCloseTo(2745.6, 9);
    expect(line.cost?.value).toBeCloseTo(356.928, 9);
  });

  it.each([
    ["a negative current", { currentA: -9 }, "settings.0.currentA", /cannot be negative; -9 A/],
    [
      "15 A typed as 1500",
      { currentA: 1500 },
      "settings.0.currentA",
      /1500 A is more than any outlet carries.*15\.00 A/,
    ],
    ["a text for a number", { currentA: Number.NaN }, "settings.0.currentA", /not a number/],
    ["no current at all", { currentA: null }, "settings.0.currentA", /Type the current/],
    ["more hours than a year", { hoursPerYear: 9000 }, "settings.0.hoursPerYear", /A year has 8760 hours/],
    ["a duty in per cent", { dutyFraction: 60 }, "settings.0.dutyFraction", /type 0\.6/],
  ])("refuses %s and keeps nothing", async (_, reading, field, words) => {
    const { ctx, buildingId } = smallOffice();
    const input = heaterInput({ settings: [settingInput(reading)] });
    const error = await refusalOf(() => registerDevice(ctx, buildingId, input));
    expect(error.code).toBe("invalid");
    expect(error.fieldErrors[field]).toMatch(words);
    expect(readDevices(ctx, buildingId)).toEqual([]);
  });

  it("refuses settings that are selected for more hours together than a year has", async () => {
    const { ctx, buildingId } = smallOffice();
    const settings = [settingInput({ hoursPerYear: 5000 }), settingInput({ name: "low-heat", hoursPerYear: 3761 })];
    const error = await refusalOf(() => registerDevice(ctx, buildingId, heaterInput({ settings })));
    expect(error.message).toContain("8761 hours together");
    const whole = heaterInput({ settings: settings.map((each, i) => ({ ...each, hoursPerYear: [5000, 3760][i] })) });
    const id = registerDevice(ctx, buildingId, whole);
    expect(readDevice(ctx, buildingId, id).sheet.energy.status).toBe("ok");
  });

  it("refuses places that do not exist or do not fit, and a label that is taken", async () => {
    const { ctx, buildingId } = smallOffice();
    const place = async (changes: Parameters<typeof heaterInput>[0]) =>
      (await refusalOf(() => registerDevice(ctx, buildingId, heaterInput(changes)))).fieldErrors;
    expect((await place({ zoneCode: "9-99" })).zoneCode).toMatch(/There is no zone 9-99/);
    expect((await place({ deskCode: "9-99-01" })).deskCode).toMatch(/There is no desk 9-99-01/);
    expect((await place({ deskCode: "2-15-01" })).deskCode).toBe("Desk 2-15-01 does not stand in zone 2-14.");
    expect((await place({ deviceClass: "desk-fan" })).deviceClass).toMatch(/is not a heater/);
    registerDevice(ctx, buildingId, heaterInput());
    expect((await place({})).label).toMatch(/already on the register/);
  });
});

describe("a registered device", () => {
  it("is revised as a whole, under its own label", () => {
    const { ctx, buildingId } = smallOffice();
    const id = registerDevice(ctx, buildingId, heaterInput());
    const settings = [settingInput({ name: "low-heat", basis: "plug-meter", powerW: 740, currentA: null })];
    reviseDevice(ctx, buildingId, id, heaterInput({ zoneCode: "2-15", deskCode: "", settings }));
    const device = readDevice(ctx, buildingId, id);
    expect(device).toMatchObject({ zoneCode: "2-15", deskCode: null });
    expect(device.settings.map(({ name, powerW }) => [name, powerW])).toEqual([["low-heat", 740]]);
  });

  it("keeps its sheet when a revision is refused", async () => {
    const { ctx, buildingId } = smallOffice();
    const id = registerDevice(ctx, buildingId, heaterInput());
    const before = readDevice(ctx, buildingId, id);
    const wrong = heaterInput({ settings: [settingInput({ currentA: -1 })] });
    await refusalOf(() => reviseDevice(ctx, buildingId, id, wrong));
    expect(readDevice(ctx, buildingId, id)).toEqual(before);
  });

  it("stays on record when it is retired, and can be put back", async () => {
    const { ctx, buildingId } = smallOffice();
    const id = registerDevice(ctx, buildingId, heaterInput());
    expect((await refusalOf(() => retireDevice(ctx, buildingId, id, "soon"))).fieldErrors.retiredOn).toBeDefined();
    retireDevice(ctx, buildingId, id, "2025-07-01");
    expect(readDevices(ctx, buildingId).map(({ retiredOn }) => retiredOn)).toEqual(["2025-07-01"]);
    retireDevice(ctx, buildingId, id, null);
    expect(readDevice(ctx, buildingId, id).retiredOn).toBeNull();
  });

  it("is not found from another building", async () => {
    const { ctx, buildingId } = smallOffice();
    const id = registerDevice(ctx, buildingId, heaterInput());
    expect((await refusalOf(() => readDevice(ctx, buildingId + 1, id))).code).toBe("not-found");
    expect((await refusalOf(() => retireDevice(ctx, buildingId + 1, id, null))).code).toBe("not-found");
  });
});
