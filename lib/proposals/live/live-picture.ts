import { quantiles } from "@/lib/statistics/quantile";
import type { Range80 } from "@/lib/working/working";
import { type ActingWindow, shareOfDays } from "../acting-window";
import type { ZoneLever } from "../lever";
import { LIVE_STATES, type LiveBuilding } from "../live-building";
import { type LivePicture, SAVING_PARTS, type SavingPart } from "../live-picture";
import { circuitsRelieved } from "./circuits-relieved";
import { type EnergySaved, energySaved } from "./energy-saved";
import { expectedSides } from "./expected-sides";
import { type Move, moveOf, sharesOf } from "./felt";
import { FOOT_WARMER_W } from "./heaters-given";
import { idleLevers } from "./idle-levers";
import { bought, inForceKwh, keptShare, type Totals, totalsOf } from "./money";
import { perDayWorking } from "./per-day-working";
import { savingWorkings } from "./saving-working";
import { drawCount, drawnNumbers, statedNumbers } from "./shared-numbers";
import { hoursBelow, hoursBelowAfter } from "./temperature-hours";
import { whileItStands } from "./while-it-stands";

/**
 * Everything that a variant's levers would make of a building in their first year, at once: pure, and quick enough to follow
 * a slider. Only what lies in the season and hours of `window` counts. Ranges are of the draws that the cost of overcooling was worked out
 * with; demand charges are not counted.
 */
export function livePicture(building: LiveBuilding, chosen: readonly ZoneLever[], window: ActingWindow): LivePicture {
  const stated = statedNumbers(building);
  const move = moveOf(building, chosen, window, stated);
  const saved = energySaved(building, move, stated);
  const totals = totalsOf(building, saved, stated);
  const seasonDays = building.occupiedDays * shareOfDays(window);
  const perDay = (kwh: number): number => (seasonDays > 0 ? kwh / seasonDays : 0);
  const drawnPerDay: number[] = [];
  const drawn = Array.from({ length: drawCount(building) }, (_, draw) => {
    const shared = drawnNumbers(building, draw);
    const own = energySaved(building, move, shared);
    drawnPerDay.push(perDay(inForceKwh(building, own)));
    return totalsOf(building, own, shared);
  });
  const workings = savingWorkings(building, saved, stated);
  const worked = (name: keyof Totals) => ({
    ...rangeOf(drawn.map((each) => each[name])),
    stated: totals[name],
    working: workings[name],
  });
  const sides = expectedSides(building.reports, saved.byZone);
  return {
    saving: worked("saving"),
    electricKwh: worked("electricKwh"),
    electricPerDayKwh: {
      ...rangeOf(drawnPerDay),
      stated: perDay(inForceKwh(building, saved)),
      working: perDayWorking(building, saved, stated, seasonDays),
    },
    heatKwh: worked("heatKwh"),
    emissionsKgCo2: worked("emissionsKgCo2"),
    parts: partsOf(building, saved, stated),
    ...temperatures(building, saved),
    whileItStands: whileItStands(building, saved.byZone),
    cold: sides?.cold ?? null,
    hot: sides?.hot ?? null,
    ...heatersOf(building, saved, move),
    circuits: circuitsRelieved(building.circuits, saved.byZone),
    idle: idleLevers(building, chosen, stated, move.acting),
  };
}

function rangeOf(values: readonly number[]): Range80 {
  const [p10, p50, p90] = quantiles(values, [0.1, 0.5, 0.9]) as [number, number, number];
  return { p10, p50, p90 };
}

function partsOf(
  { isHeatElectric, heatPricePerKwh }: LiveBuilding,
  saved: EnergySaved,
  stated: ReturnType<typeof statedNumbers>,
): LivePicture["parts"] {
  return (Object.keys(SAVING_PARTS) as SavingPart[]).map((id) => {
    const energy = bought(saved.parts[id], isHeatElectric);
    const money = energy.electricKwh * stated.electricityPrice + energy.heatKwh * (heatPricePerKwh ?? 0);
    return { id, label: SAVING_PARTS[id], stated: keptShare(id, stated) * money };
  });
}

const BIN_K = 0.5;
const BINS = { fromC: 19, toC: 28 };

/** Hours of the zones of the proposal by half kelvins, and the share of them outside the comfort range. */
function temperatures(
  { tempsC, comfort }: LiveBuilding,
  { byZone }: EnergySaved,
): Pick<LivePicture, "temps" | "outsideComfort"> {
  const shares = new Map(byZone.map(({ zone, acting }) => [zone.zoneId, sharesOf(zone, acting)]));
  const below = (airTempC: number, isAfter: boolean): number => {
    let sum = 0;
    for (const { zone, effect } of byZone) {
      if (!zone.states) continue;
      for (const name of LIVE_STATES) {
        const state = zone.states[name];
        const share = shares.get(zone.zoneId)?.[name] ?? 0;
        sum += isAfter
          ? hoursBelowAfter(state, tempsC, airTempC, { riseK: effect.rises[name], share })
          : hoursBelow(state, tempsC, airTempC);
      }
    }
    return sum;
  };
  const all = below(99, false);
  const count = Math.round((BINS.toC - BINS.fromC) / BIN_K);
  const edges = Array.from({ length: count + 1 }, (_, k) => BINS.fromC + k * BIN_K);
  const [before, after] = [false, true].map((isAfter) => edges.map((edge) => below(edge, isAfter))) as [
    number[],
    number[],
  ];
  const temps = edges.slice(0, -1).map((lowC, k) => ({
    lowC,
    hoursBefore: (before[k + 1] as number) - (before[k] as number),
    hoursAfter: (after[k + 1] as number) - (after[k] as number),
  }));
  const outside = (isAfter: boolean): number =>
    all > 0 ? (below(comfort.lowerC, isAfter) + all - below(comfort.upperC, isAfter)) / all : 0;
  return { temps, outsideComfort: { before: outside(false), after: outside(true) } };
}

function heatersOf(
  building: LiveBuilding,
  { byZone }: EnergySaved,
  { felt }: Move,
): Pick<LivePicture, "heatersGiven" | "circuitRelief"> {
  const of = byZone.reduce((sum, { zone }) => sum + zone.heaters.count, 0);
  const expected = byZone.reduce((sum, { zone, gone }) => sum + zone.heaters.count * gone, 0);
  const removal = rangeOf(building.shared.heaterRemovalFraction.draws);
  const at = (fraction: number): number =>
    byZone.reduce((sum, { zone, levers }) => {
      const replaced = levers["personal-device"] / 100;
      const given = fraction * (felt.get(zone.zoneId)?.coldGone ?? 0);
      return sum + zone.heaters.count * (1 - (1 - replaced) * (1 - given));
    }, 0);
  return {
    heatersGiven: { expected, of, low: at(removal.p10), high: at(removal.p90) },
    circuitRelief: {
      goneW: byZone.reduce((sum, { zone, gone }) => sum + zone.heaters.highPowerW * gone, 0),
      addedW: byZone.reduce(
        (sum, { zone, levers }) => sum + zone.heaters.count * (levers["personal-device"] / 100) * FOOT_WARMER_W,
        0,
      ),
    },
  };
}
