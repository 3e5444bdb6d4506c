import { expect, test } from "vitest";
import { warmedZoneTempC } from "@/lib/overcooling/components/warmed-zone-temp";
import { predictedZoneTemp } from "@/lib/trends/predicted-zone-temp";

test("the zone air at the required airflow is the one that the diagnosis predicts, or the present one", () => {
  const seen = new Set<string>();
  for (const zoneAirTempC of [12, 13, 19.5, 20.8, 22.9, 23.5, 24])
    for (const minimumAirflowM3ps of [0, 0.12, 0.2, 0.3])
      for (const requiredAirflowM3ps of [0.05, 0.12, 0.25]) {
        const now = {
          zoneAirTempC,
          supplyAirTempC: 13,
          minimumAirflowM3ps,
          requiredAirflowM3ps,
          targetZoneAirTempC: 23.5,
        };
        const predicted = predictedZoneTemp(now);
        seen.add(predicted.status);
        const wanted = predicted.status === "ok" ? predicted.zoneAirTempC : zoneAirTempC;
        expect(warmedZoneTempC(now)).toBeCloseTo(wanted, 12);
      }
  expect([...seen].sort()).toEqual(["at-required-airflow", "not-overcooled", "ok", "outside-limits"]);
});
