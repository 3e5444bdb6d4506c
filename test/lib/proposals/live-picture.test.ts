import { expect, test } from "vitest";
import { ALL_YEAR } from "@/lib/proposals/acting-window";
import { actingHours } from "@/lib/proposals/live/acting-hours";
import { livePicture } from "@/lib/proposals/live/live-picture";
import { statedNumbers } from "@/lib/proposals/live/shared-numbers";
import { zoneEffect } from "@/lib/proposals/live/zone-effect";
import { noLevers } from "@/lib/proposals/live/zone-levers";
import { liveBuilding, liveZone, stateAt } from "@/test/factories/live-building";
import { evaluateFormula, workingsIn } from "../overcooling/evaluate-formula";

const lever = (name: Parameters<typeof livePicture>[1][number]["lever"], amount: number, zoneId = 1) => ({
  zoneId,
  lever: name,
  amount,
});

const part = (picture: ReturnType<typeof livePicture>, id: string) =>
  picture.parts.find((each) => each.id === id)?.stated ?? Number.NaN;

/** Reference "Example Hall", worked with another program; see test/check-values/overcooling. */
test("a lower minimum saves what the reference's worked building says for deadband and reheat", () => {
  const picture = livePicture(liveBuilding(), [lever("minimum-airflow", 60)], ALL_YEAR);
  // C4a 2,221.8 kWh and C4b 4,243.7 kWh at 0.085; 22,146.3 kWh of gas at 1 $/therm.
  expect(part(picture, "deadband")).toBeCloseTo(188.85, 0);
  expect(part(picture, "reheat")).toBeCloseTo(360.71 + 755.66, 0);
  expect(picture.heatKwh.stated).toBeCloseTo(22_146.3 - heaterHeat(picture), 0);
});

/** Heat that heaters which go had replaced, as a positive number. */
const heaterHeat = (picture: ReturnType<typeof livePicture>): number => {
  const term = picture.heatKwh.working.terms.find((each) => each.symbol === "Q_5");
  return -(term?.value ?? 0);
};

/** UA · hours · K · m / COP by hand: 5.412 · 765.144 · 1 · 0.7987 / 3.51685 = 940.5 kWh, at 0.085. */
test("a kelvin of cooling setpoint is worth its heat loss in the hours that it holds", () => {
  const picture = livePicture(liveBuilding(), [lever("cooling-setpoint", 1)], ALL_YEAR);
  expect(part(picture, "setpoint")).toBeCloseTo(79.94, 1);
  expect(part(picture, "deadband")).toBe(0);
  expect(part(picture, "reheat")).toBe(0);
});

test("nothing moves without a lever, and figures grow with one", () => {
  const building = liveBuilding();
  const still = livePicture(building, [], ALL_YEAR);
  expect(still.saving.stated).toBe(0);
  expect(still.heatersGiven.of).toBe(0);
  const savings = [0.5, 1, 2].map((each) => livePicture(building, [lever("cooling-setpoint", each)], ALL_YEAR));
  expect(savings[1]?.saving.stated).toBeGreaterThan(savings[0]?.saving.stated ?? 0);
  expect(savings[2]?.electricKwh.stated).toBeGreaterThan(savings[1]?.electricKwh.stated ?? 0);
  expect(savings[2]?.cold?.after).toBeLessThan(savings[1]?.cold?.after ?? 0);
  expect(savings[2]?.hot?.after).toBeGreaterThan(savings[1]?.hot?.after ?? 0);
});

test("the fan's curve is shared: a lower minimum of one zone counts at the airflow of all", () => {
  const zones = [liveZone(), liveZone({ zoneId: 2, code: "1-02" })];
  const one = livePicture(liveBuilding(zones), [lever("minimum-airflow", 60)], ALL_YEAR);
  const both = livePicture(
    liveBuilding(zones),
    [lever("minimum-airflow", 60), lever("minimum-airflow", 60, 2)],
    ALL_YEAR,
  );
  expect(part(one, "fan")).toBeGreaterThan(0);
  expect(part(both, "fan")).toBeGreaterThan(part(one, "fan"));
  expect(part(both, "fan")).toBeLessThan(2 * part(one, "fan"));
});

test("a warmer zone needs less air: warmer air carries more, and walls and heaters bring less in", () => {
  const building = liveBuilding();
  const [zone] = building.zones;
  if (!zone) throw new Error("the building has a zone");
  const acting = actingHours(building, ALL_YEAR).byZone.get(1) ?? null;
  const air = (heaterKw: number) =>
    zoneEffect(zone, { ...noLevers, "cooling-setpoint": 1 }, statedNumbers(building), acting, heaterKw).air;
  // By hand: 9 m³/s over 8.5 K; walls 5 · (1.0824 - 1.206 · 0.425) = 2.849 kW less, heaters 3 kW less, of 10.854 kW/K; over 9.5 K then.
  const spared = (lessKw: number) => 9 - (9 * (8.5 - lessKw / (1.206 * 9))) / 9.5;
  expect(air(0)?.sparedActing).toBeCloseTo(spared(5 * (1.0824 - 1.206 * 0.425)) * 765.144, 6);
  expect(air(3)?.sparedActing).toBeCloseTo(spared(5 * (1.0824 - 1.206 * 0.425) + 3) * 765.144, 6);
});

test("a lever that does nothing in a zone says so and saves nothing", () => {
  const idle = liveZone({
    states: { cooling: stateAt(0, 23), deadband: stateAt(100, 21), reheat: stateAt(0, 21), other: stateAt(900, 22) },
    airflow: { designM3ps: 20, minimumM3ps: 2.4, coolingM3ps: 9 },
    heaters: { count: 0, energyKwh: 0, highPowerW: 0 },
  });
  const levers = [
    lever("cooling-setpoint", 1),
    lever("heating-setpoint", 1),
    lever("minimum-airflow", 50),
    lever("personal-device", 100),
    lever("fault-fix", 1),
  ];
  const picture = livePicture(liveBuilding([idle]), levers, ALL_YEAR);
  expect(picture.idle.map((each) => each.lever)).toEqual(levers.map((each) => each.lever));
  expect(picture.saving.stated).toBeLessThanOrEqual(0);
  expect(
    livePicture(liveBuilding([liveZone({ states: null })]), [lever("cooling-setpoint", 1)], ALL_YEAR).idle[0]?.reason,
  ).toMatch(/no usable record/);
});

test("a zone whose trends tell no state is promised nothing, and the missing trend is what it says", () => {
  const untold = liveZone({
    states: { cooling: stateAt(0, 23), deadband: stateAt(0, 23), reheat: stateAt(0, 23), other: stateAt(1900, 21.5) },
  });
  const picture = livePicture(liveBuilding([untold]), [lever("cooling-setpoint", 1)], ALL_YEAR);
  expect(picture.electricKwh.stated).toBe(0);
  expect(picture.idle[0]?.reason).toMatch(/no state that they tell/);
});

test("heaters go as far as the cold goes, and foot warmers and fans come in their place", () => {
  const warm = livePicture(liveBuilding(), [lever("cooling-setpoint", 2)], ALL_YEAR);
  expect(warm.heatersGiven.of).toBe(40);
  expect(warm.heatersGiven.expected).toBeGreaterThan(0);
  expect(warm.heatersGiven.expected).toBeLessThanOrEqual(20);
  const swapped = livePicture(liveBuilding(), [lever("personal-device", 100)], ALL_YEAR);
  expect(swapped.heatersGiven.expected).toBe(40);
  expect(swapped.circuitRelief).toEqual({ goneW: 60_000, addedW: 400 });
  // 40 foot warmers of 10 W over 1,912.86 h, by hand.
  expect(part(swapped, "rebound")).toBeCloseTo(-765.144 * 0.085, 6);
});

test("hours over temperature add up to the year before and after", () => {
  const { temps, outsideComfort } = livePicture(liveBuilding(), [lever("cooling-setpoint", 1)], ALL_YEAR);
  const total = (of: "hoursBefore" | "hoursAfter") => temps.reduce((sum, each) => sum + each[of], 0);
  expect(total("hoursBefore")).toBeCloseTo(1912.86, 6);
  expect(total("hoursAfter")).toBeCloseTo(1912.86, 6);
  expect(outsideComfort.after).toBeLessThan(outsideComfort.before);
});

test("the workings add up to the figures", () => {
  const picture = livePicture(
    liveBuilding(),
    [
      lever("cooling-setpoint", 1),
      lever("minimum-airflow", 60),
      lever("heating-setpoint", 0.5),
      lever("supply-air-temp", 1),
      lever("schedule", 0.5),
    ],
    ALL_YEAR,
  );
  for (const each of [picture.saving, picture.electricKwh, picture.heatKwh, picture.emissionsKgCo2]) {
    expect(each.working.result.value).toBeCloseTo(each.stated, 6);
    for (const working of workingsIn(each.working))
      expect(evaluateFormula(working), working.formula).toBeCloseTo(working.result.value, 6);
    expect(each.p10).toBeCloseTo(each.stated, 6);
  }
  expect(picture.parts.reduce((sum, each) => sum + each.stated, 0)).toBeCloseTo(picture.saving.stated, 6);
});
