import { expect, test } from "vitest";
import { assessBuilding } from "@/lib/overcooling/assess-building";
import type { Assessed } from "@/lib/overcooling/assessment";
import type { ElectricityPrice } from "@/lib/overcooling/assessment-input";
import { evaluateFormula, workingsIn } from "./evaluate-formula";
import { office } from "./offices";

const MARGINAL: ElectricityPrice = {
  kind: "marginal",
  pricePerKwh: 0.1,
  demandPricePerKw: 12,
  demandMonths: 5,
  pricedHours: null,
  demandYear: null,
};
const ok = (electricity: Partial<ElectricityPrice>): Assessed => {
  const result = assessBuilding(office({ draws: 300, electricity: { ...MARGINAL, ...electricity } }));
  if (result.status !== "ok") throw new Error(JSON.stringify(result.findings));
  return result;
};
const money = (result: Assessed, id: string) => result.components.find((each) => each.id === id)?.statedValue as number;

// By hand: 600 h at 0.20 and 1,400 h at 0.10 are 0.13 a kWh.
test("time of use prices a saved kWh by the season's hours, in every component, and shows it in the working", () => {
  const flat = ok({});
  const tou = ok({
    pricedHours: [
      { label: "on-peak", hours: 600, pricePerKwh: 0.2 },
      { label: "all other hours", hours: 1400, pricePerKwh: 0.1 },
    ],
  });
  for (const id of ["heater-energy", "setpoint", "deadband", "fan"])
    expect(money(tou, id)).toBeCloseTo(1.3 * money(flat, id), 6);
  expect(money(tou, "demand")).toBe(money(flat, "demand"));
  const setpoint = tou.components.find((each) => each.id === "setpoint");
  const price = workingsIn(setpoint?.working as NonNullable<typeof setpoint>["working"]).find(
    (each) => each.result.symbol === "p_e",
  );
  expect(price?.result.value).toBeCloseTo(0.13, 12);
  expect(price && evaluateFormula(price)).toBeCloseTo(0.13, 12);
});

test("a year of peaks counts the months that a lower peak is billed in, a ratchet's winter months with them", () => {
  const peaksKw = [300, 300, 300, 300, 320, 450, 460, 455, 430, 300, 300, 300];
  const year = { peaksKw, ratchetFraction: 0, coolingMonths: [4, 5, 6, 7, 8] };
  const plain = ok({});
  expect(money(ok({ demandYear: year }), "demand")).toBeCloseTo(money(plain, "demand"), 6);
  // July alone is the highest: with the ratchet at 80 % its fall counts in the seven months billed at the ratchet.
  expect(money(ok({ demandYear: { ...year, ratchetFraction: 0.8 } }), "demand")).toBeGreaterThan(
    1.2 * money(plain, "demand"),
  );
});

test("a blended price is not refined by a tariff", () => {
  const hours = [{ label: "on-peak", hours: 1, pricePerKwh: 9 }];
  expect(ok({ kind: "blended", pricedHours: hours }).headline).toEqual(ok({ kind: "blended" }).headline);
});
