import type { PlannedZone } from "@/lib/comfort-reports/both-sides/expected-reports";
import type { ZoneExposureBins } from "@/lib/comfort-reports/both-sides/report-model";
import { REFERENCE_TEMP_C, type VotePrior } from "@/lib/comfort-reports/both-sides/vote-prior";
import { normalPair } from "@/lib/statistics/normal";
import { poissonProbability } from "@/lib/statistics/poisson";
import { type RandomSource, seededRandom } from "@/lib/statistics/random";

export type PlantedReports = {
  zones: ZoneExposureBins[];
  planned: PlannedZone[];
  /** Reports that are to be expected when the air is moved by `shiftK`. */
  truth: (shiftK: number) => { tooCold: number; tooWarm: number };
};

const normal = (random: RandomSource): number => normalPair(random)[0];
const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

function poisson(random: RandomSource, mean: number): number {
  if (mean > 300) return Math.max(0, Math.round(mean + Math.sqrt(mean) * normal(random)));
  let [count, left] = [0, random()];
  for (left -= poissonProbability(0, mean); left > 0 && count < 2000; left -= poissonProbability(count, mean)) count++;
  return count;
}

/**
 * An invented building: its shares are drawn about the field votes as buildings differ, its rate of reports over a factor of
 * 20, its floors and zones with a deviation between 0.1 and 0.9 (floors half of it). A zone's air lies about its own mean.
 */
export function plantedReports(seed: number, prior: VotePrior): PlantedReports {
  const random = seededRandom(seed * 7919 + 17);
  const draw = (mean: number, deviation: number): number => mean + deviation * normal(random);
  const line = ({ a, b, deviationA, deviationB }: VotePrior["warmer"]) => ({ a: draw(a, deviationA), b: draw(b, deviationB) });
  const lines = [line(prior.warmer), line(prior.cooler)] as const;
  const logRate = Math.log(1 / 300) + (random() - 0.5) * Math.log(20);
  const deviation = 0.1 + 0.8 * random();
  const floorEffects = Array.from({ length: 3 }, () => [draw(0, deviation / 2), draw(0, deviation / 2)] as const);
  const zones = Array.from({ length: 24 }, (_, z) => {
    const floor = z % 3;
    const effects = [draw(0, deviation), draw(0, deviation)] as const;
    const [meanC, spreadK, desks] = [draw(22.6, 0.9), 0.5 + 0.5 * random(), 3 + Math.floor(9 * random())];
    const bins = Array.from({ length: 9 }, (_, i) => 19 + i).flatMap((airTempC) => {
      const share = Math.exp(-0.5 * ((airTempC - meanC) / spreadK) ** 2) / (spreadK * Math.sqrt(2 * Math.PI));
      return share > 0.002 ? [{ airTempC, deskHours: 1100 * desks * share }] : [];
    });
    return { zone: `Z${z}`, floor, effects, bins };
  });
  const rate = (side: 0 | 1, { floor, effects }: (typeof zones)[number], airTempC: number): number => {
    const { a, b } = lines[side];
    const floorEffect = floorEffects[floor]?.[side] ?? 0;
    return Math.exp(logRate + floorEffect + effects[side]) * logistic(a + b * (airTempC - REFERENCE_TEMP_C));
  };
  const truth = (shiftK: number) => {
    const total = (side: 0 | 1) =>
      zones.reduce((sum, zone) => sum + zone.bins.reduce((s, bin) => s + bin.deskHours * rate(side, zone, bin.airTempC + shiftK), 0), 0);
    return { tooCold: total(0), tooWarm: total(1) };
  };
  return {
    truth,
    planned: zones.map(({ zone, bins }) => ({ zone, bins })),
    zones: zones.map((zone) => ({
      zone: zone.zone,
      floor: String(zone.floor),
      bins: zone.bins.map((bin) => ({
        ...bin,
        tooCold: poisson(random, bin.deskHours * rate(0, zone, bin.airTempC)),
        tooWarm: poisson(random, bin.deskHours * rate(1, zone, bin.airTempC)),
      })),
    })),
  };
}
