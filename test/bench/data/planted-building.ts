import type { ResolvedAssumption } from "@/lib/assumptions/assumption";
import type { AssessedZone, AssessmentInput } from "@/lib/overcooling/assessment-input";
import { type RandomSource, seededRandom, seedFromText } from "@/lib/statistics/random";
import { triangularQuantile } from "@/lib/statistics/triangular";
import { defaults, heater, held, office, zone } from "../../lib/overcooling/offices";

/** A building as the tool sees it, and as it truly is. */
export type Planted = { seen: AssessmentInput; truth: AssessmentInput };

/** Drawn apart for each zone: planted in the readings of the zone, and then held at no error in the truth. */
const OF_A_ZONE = { "zone-sensor-offset": 0, "minimum-airflow-error-factor": 1 } as const;

/**
 * An invented building with its truth. What is the building's own (zones, hours, depths, heaters, system, fuel, prices)
 * is drawn evenly from spans of ordinary offices. The truth of every uncertain input is drawn from the range that the
 * tool states for it, by a random stream that the tool does not use: an assumption takes its true value; a sensor's
 * offset and a flow sensor's error are put into what the tool reads of a zone, while the truth has the zone as it is; a
 * heater's true energy lies in its range. So an interval that covers the truth as often as it says proves the drawing,
 * combining and reading off of ranges. It cannot prove that the stated ranges are wide enough, nor the formulas, which
 * both sides share.
 */
export function plantedBuilding(number: number): Planted {
  const random = seededRandom(seedFromText(`planted building ${number}`));
  const between = (low: number, high: number): number => low + (high - low) * random();
  const oneOf = <T>(values: readonly T[]): T => values[Math.floor(random() * values.length)] as T;
  const systemType = oneOf(["vav-reheat-high-minimum", "vav-reheat-low-minimum", "single-zone-dx"] as const);
  const assumptions = defaults();
  const trueValue = (each: Pick<ResolvedAssumption, "low" | "value" | "high">): number =>
    triangularQuantile({ low: each.low, mode: each.value, high: each.high }, random());
  const trueAssumptions = defaults(
    Object.fromEntries(
      assumptions.map((each) => [
        each.id,
        held(each.id in OF_A_ZONE ? OF_A_ZONE[each.id as keyof typeof OF_A_ZONE] : trueValue(each)),
      ]),
    ),
  );
  const rangeOf = (id: keyof typeof OF_A_ZONE): ResolvedAssumption =>
    assumptions.find((each) => each.id === id) as ResolvedAssumption;

  const zones = Array.from({ length: 1 + Math.floor(6 * random()) }, (_, k) =>
    plantedZone(k + 1, number, {
      random,
      between,
      offsetK: trueValue(rangeOf("zone-sensor-offset")),
      flowFactor: trueValue(rangeOf("minimum-airflow-error-factor")),
    }),
  );
  const shared = office({
    floorAreaM2: 140 * zones.length,
    systemType,
    heatingFuel: oneOf(["gas", "electricity", "district"] as const),
    hasEconomizer: random() < 0.7,
    electricity: {
      kind: "marginal",
      pricePerKwh: between(0.06, 0.3),
      demandPricePerKw: random() < 0.5 ? between(5, 20) : null,
      demandMonths: 5, pricedHours: null, demandYear: null,
    },
    heatPricePerKwh: between(0.03, 0.1),
    seed: 1 + number,
    draws: 2000,
  });
  return {
    seen: { ...shared, assumptions, zones: zones.map((each) => each.seen) },
    truth: { ...shared, assumptions: trueAssumptions, zones: zones.map((each) => each.truth), draws: 100 },
  };
}

type Luck = { random: RandomSource; between: (low: number, high: number) => number; offsetK: number; flowFactor: number };

/** Depths are over 0.6 K, so that a sensor within its range never reads a cold zone as a warm one. */
function plantedZone(id: number, number: number, luck: Luck): { seen: AssessedZone; truth: AssessedZone } {
  const { between, random, offsetK, flowFactor } = luck;
  const states = {
    cooling: { hours: between(300, 1200), depthK: between(0.6, 2) },
    deadband: { hours: between(100, 700), depthK: between(0.6, 2) },
    reheat: { hours: between(0, 500), depthK: 2 },
  };
  // Air that is warmer than the sensor says by the offset reads that much deeper below the target.
  const readDeeper = (state: { hours: number; depthK: number }) => ({ ...state, depthK: state.depthK + offsetK });
  const minimumM3ps = between(0.08, 0.3);
  const devices = random() < 0.6 ? [heater(100 * number + id, between(60, 900))] : [];
  const trueDevices = devices.map((device) => {
    const { low, value, high } = device.energyKwhPerYear;
    const energy = triangularQuantile({ low, mode: value, high }, random());
    return { ...device, energyKwhPerYear: { value: energy, low: energy, high: energy } };
  });
  const truth = zone(id, states, { devices: trueDevices, minimumAirflowM3ps: minimumM3ps });
  const seen = zone(
    id,
    { cooling: readDeeper(states.cooling), deadband: readDeeper(states.deadband), reheat: readDeeper(states.reheat) },
    { devices, minimumAirflowM3ps: minimumM3ps / flowFactor },
  );
  return { seen, truth };
}
