import { expect, test } from "vitest";
import { annualBill } from "@/lib/finance/electricity-bill";
import { timeOfUseCost } from "@/lib/finance/time-of-use-cost";
import { usefulHeatPrice } from "@/lib/finance/useful-heat-price";
import { KWH_PER_THERM, thermsFromKwh } from "@/lib/units/energy";
import { compareWithCase, loadCheckValues } from "../../support/check-values";

type Bill = {
  kWh: number[];
  kW: number[];
  energy_rate: number;
  demand_rate: number;
  fixed_per_month: number;
  ratchet: number;
};
test.each(loadCheckValues<Bill>("finance/blended-and-marginal").cases)(
  "a bill divided by its energy overstates what a kWh is worth: $name",
  (check) => {
    const i = check.inputs;
    const months = i.kWh.map((energyKwh, k) => ({ energyKwh, demandKw: i.kW[k] ?? Number.NaN }));
    const rates = { pricePerKwh: i.energy_rate, demandPricePerKw: i.demand_rate, fixedPerMonth: i.fixed_per_month };
    const plain = annualBill(months, { ...rates, ratchetFraction: 0 });
    const blended = plain.blendedPricePerKwh ?? Number.NaN;
    compareWithCase(check, {
      annual_bill: plain.total,
      blended,
      marginal: i.energy_rate,
      ratchet_bill: annualBill(months, { ...rates, ratchetFraction: i.ratchet }).total,
      overstatement_if_demand_added_on_top_pct: 100 * (blended / i.energy_rate - 1),
    });
  },
);

type Tou = { kWh: Record<string, number>; price: Record<string, number> };
test.each(loadCheckValues<Tou>("finance/time-of-use").cases)("prices energy by period: $name", (check) => {
  const { kWh, price } = check.inputs;
  const periods = Object.entries(kWh).map(([period, energyKwh]) => ({
    period,
    energyKwh,
    pricePerKwh: price[period] ?? Number.NaN,
  }));
  const { cost, pricePerKwh } = timeOfUseCost(periods);
  compareWithCase(check, { cost, effective_price: pricePerKwh ?? Number.NaN });
});

test.each(loadCheckValues<{ heat_kWh: number; eta: number; price_per_therm: number }>("finance/reheat-gas").cases)(
  "prices reheat by the gas it takes: $name",
  (check) => {
    const { heat_kWh: heat, eta, price_per_therm: price } = check.inputs;
    const perKwh = usefulHeatPrice({ pricePerKwh: price / KWH_PER_THERM, efficiency: eta });
    compareWithCase(check, { therms: thermsFromKwh(heat / eta), cost: heat * perKwh });
  },
);

test.each(loadCheckValues<{ elec: number; gas_therm: number; eta: number }>("finance/heater-against-boiler").cases)(
  "a resistance heater in winter costs more than the boiler's heat: $name",
  (check) => {
    const heater = usefulHeatPrice({ pricePerKwh: check.inputs.elec, efficiency: 1 });
    const boiler = usefulHeatPrice({
      pricePerKwh: check.inputs.gas_therm / KWH_PER_THERM,
      efficiency: check.inputs.eta,
    });
    compareWithCase(check, { heater, boiler, ratio: heater / boiler });
  },
);

test("without energy there is no price of a kWh", () => {
  expect(timeOfUseCost([])).toEqual({ cost: 0, pricePerKwh: null });
  expect(
    annualBill([], { pricePerKwh: 1, demandPricePerKw: 1, fixedPerMonth: 1, ratchetFraction: 0 }).blendedPricePerKwh,
  ).toBeNull();
});
