import { expect, it } from "vitest";
import { readZoneHistory } from "@/lib/services/zones/history";
import { smallOffice } from "@/test/factories/office";
import { bringTrends } from "@/test/factories/office-records";

it("lies behind a zone's lines for the whole period, in the range of summer clothes on days of the cooling season", async () => {
  const office = smallOffice();
  await bringTrends(office);
  const { comfortBand, fromUtcSeconds, toUtcSeconds } = await readZoneHistory(
    office.ctx,
    office.buildingId,
    office.zoneId,
  );
  expect(comfortBand[0]?.utcSeconds).toBe(fromUtcSeconds);
  expect(comfortBand.at(-1)?.utcSeconds).toBe(toUtcSeconds);
  // Comfort zone at 1.1 met, RH 50: 0.5 clo 23.9 to 26.9 °C, 1.0 clo 20.3 to 24.5 °C (own solver of the reference at 0.1 m/s);
  // with an office chair (0.1 clo) and 0.13 m/s summer lies a little below and above them.
  for (const { lowC, highC } of comfortBand) {
    expect(lowC).toBeGreaterThan(22.8);
    expect(lowC).toBeLessThan(24.2);
    expect(highC).toBeGreaterThan(25.8);
    expect(highC).toBeLessThan(27.2);
  }
});
