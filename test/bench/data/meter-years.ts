import { readFileSync, writeFileSync } from "node:fs";
import type { EnergyReadings } from "@/lib/energy-model/change-point/fit-model";
import { normalPair } from "@/lib/statistics/normal";
import { seededRandom } from "@/lib/statistics/random";

/** A file of hourly meters: of each the temperatures, then the energies, as little-endian float64. */
export type FitInput = { file: string; meters: number; points: number };

/**
 * Years of hours of invented buildings with both wings, of one seed: small and large slopes, noise from a tenth of the
 * base load to as much as it, persistent from hour to hour. Every other one has temperatures in tenths of a kelvin as
 * weather files give them, the others as interpolated series have them, no two alike.
 */
export function writeMeterYears(input: FitInput): void {
  const random = seededRandom(20_261_129);
  const all = new Float64Array(input.meters * 2 * input.points);
  for (let meter = 0; meter < input.meters; meter++) {
    const [temps, energies] = [0, 1].map((part) =>
      all.subarray((meter * 2 + part) * input.points, (meter * 2 + part + 1) * input.points),
    ) as [Float64Array, Float64Array];
    const mean = 8 + 12 * random();
    const [heatingChange, coolingChange] = [mean - 2 - 5 * random(), mean + 2 + 5 * random()];
    const base = 50 + 100 * random();
    const [heating, cooling] = [base * (0.01 + 0.05 * random()), base * (0.01 + 0.05 * random())];
    const noise = base * 0.1 * 10 ** random();
    let [weather, error] = [0, 0];
    for (let hour = 0; hour < input.points; hour++) {
      weather = 0.98 * weather + 0.7 * normalPair(random)[0];
      error = 0.6 * error + 0.8 * noise * normalPair(random)[0];
      const year = -10 * Math.cos((2 * Math.PI * hour) / 8760);
      const exact = mean + year - 4 * Math.cos((2 * Math.PI * (hour % 24)) / 24) + weather;
      const tempC = meter % 2 === 0 ? Math.round(exact * 10) / 10 : exact;
      temps[hour] = tempC;
      energies[hour] =
        base + heating * Math.max(0, heatingChange - tempC) + cooling * Math.max(0, tempC - coolingChange) + error;
    }
  }
  writeFileSync(input.file, new Uint8Array(all.buffer));
}

export function readMeterYears({ file, meters, points }: FitInput): EnergyReadings[] {
  const bytes = readFileSync(file);
  const all = new Float64Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
  return Array.from({ length: meters }, (_, meter) => ({
    outdoorC: all.subarray(meter * 2 * points, (meter * 2 + 1) * points),
    energyKwh: all.subarray((meter * 2 + 1) * points, (meter * 2 + 2) * points),
  }));
}
