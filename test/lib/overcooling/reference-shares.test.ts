import { expect, test } from "vitest";
import { compoundedSavingFraction } from "@/lib/energy-model/percent-per-kelvin";
import { heatRemovalKwh, reheatCreditKwh } from "@/lib/overcooling/components/heat-removal";
import { screeningKwh } from "@/lib/overcooling/components/screening";
import { kwhFromTherms } from "@/lib/units/energy";
import { compareWithCase, loadCheckValues } from "../../support/check-values";

type Hoyt = { saving: number; dT_K: number };
test.each(loadCheckValues<Hoyt>("energy-model/percent-per-kelvin").cases)(
  "a published saving over some kelvins is a percentage a kelvin, linear or compounded: $name",
  (check) => {
    const { saving, dT_K: riseK } = check.inputs;
    const compounded = 1 - (1 - saving) ** (1 / riseK);
    compareWithCase(check, { linear_pct_per_K: (100 * saving) / riseK, compound_pct_per_K: 100 * compounded });
    expect(compoundedSavingFraction({ fractionPerK: compounded, riseK })).toBeCloseTo(saving, 12);
  },
);

type Bpa = { plug_kWh: number; yield_gas: number; therm_per_kWh: number };
test.each(loadCheckValues<Bpa>("energy-model/interaction-bpa").cases)(
  "a published multiplier is heat removed and heat replaced: $name",
  (check) => {
    const { plug_kWh: heaterKwh, yield_gas: multiplier, therm_per_kWh: therms } = check.inputs;
    // The sheet's multiplier as a share of heat removed at a COP of 3.3, its gas as a share useful at 75 %.
    const cop = 3.3;
    const [coolingShare, efficiency] = [(multiplier - 1) * cop, 0.75];
    const reheatShare = kwhFromTherms(-therms) * efficiency;
    const removed = heatRemovalKwh({
      heaterKwh,
      coolingShare,
      deadbandShare: 0,
      outdoorAirFraction: 0,
      mechanicalFraction: 1,
      cop,
    });
    const credit = reheatCreditKwh({ heaterKwh, reheatShare, heatEfficiency: efficiency });
    compareWithCase(check, {
      net_elec_kWh: heaterKwh + removed,
      gas_therm_displaced: -credit / kwhFromTherms(1),
      gas_kWh_displaced: -credit,
    });
    // All-year figures of a whole region lie below the shares that this tool takes for the cooling season.
    expect(coolingShare).toBeLessThan(0.6);
    expect(reheatShare).toBeLessThan(0.3);
  },
);

type Fans = { m2_per_desk: number; EUI_kWh_m2: [number, number]; pct_per_K: number; fan_W: number[]; hours: number };
test.each(loadCheckValues<Fans>("overcooling/desk-fan-rebound").cases)(
  "desk fans eat a part of what a kelvin saves at a desk: $name",
  (check) => {
    const i = check.inputs;
    compareWithCase(check, {
      saving_kWh_per_K: screeningKwh({
        floorAreaM2: i.m2_per_desk,
        coolingKwhPerM2: i.EUI_kWh_m2[0],
        ventilationKwhPerM2: i.EUI_kWh_m2[1],
        percentPerK: 100 * i.pct_per_K,
        belowTargetK: 1,
      }),
      fan_kWh: i.fan_W.map((watts) => (watts * i.hours) / 1000),
    });
  },
);
