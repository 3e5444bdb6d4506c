import { ACTIVITIES, ACTIVITY_SOURCE } from "@/lib/comfort/activity";
import {
  CHAIR_CLO,
  CLOTHING_SOURCE,
  ENSEMBLES,
  SEASON_CLOTHING,
  SEASON_CLOTHING_SOURCE,
} from "@/lib/comfort/ensembles";
import type { FeltInputs, Spread } from "@/lib/comfort/felt-range";

/** One input of the predicted vote, with where it comes from. */
export type FeltInput = {
  what: string;
  spread: Spread;
  unit: string;
  origin: "measured" | "reported" | "assumed";
  source: string;
};

export type FeltBasis = { inputs: FeltInputs; listed: FeltInput[] };

const around = (middle: number, half: number): Spread => ({ low: middle - half, middle, high: middle + half });

/** Of a zone sensor that is not checked, and of what differs from desk to desk [K]. Common practice, no source. */
const SENSOR_HALF_K = 0.5;
const DESK_TYPING = "typing";

/** What is known of a person's surroundings and of the person, as ranges; what nobody measured or said is assumed. */
export function feltBasis(known: {
  airTempC: number;
  relHumidityPct: number | null;
  inCoolingSeason: boolean;
  clothing: string | null;
  activity: string | null;
}): FeltBasis {
  const ensemble = ENSEMBLES.find(({ id }) => id === known.clothing);
  const season = known.inCoolingSeason ? SEASON_CLOTHING.summer : SEASON_CLOTHING.winter;
  const activity = ACTIVITIES.find(({ id }) => id === (known.activity ?? DESK_TYPING));
  if (!activity) throw new RangeError(`there is no activity ${known.activity}`);
  const inputs: FeltInputs = {
    airTempC: around(known.airTempC, SENSOR_HALF_K),
    radiantOffsetK: around(0, 2),
    airSpeedMps: { low: 0.05, middle: 0.1, high: 0.2 },
    relHumidityPct: known.relHumidityPct === null ? { low: 30, middle: 50, high: 60 } : around(known.relHumidityPct, 5),
    metabolicRateMet: { low: activity.lowMet, middle: activity.met, high: activity.highMet },
    clothingClo: ensemble
      ? around(ensemble.clo + CHAIR_CLO.office, 0.1)
      : {
          low: season.lowClo + CHAIR_CLO.net,
          middle: season.clo + CHAIR_CLO.office,
          high: season.highClo + CHAIR_CLO.executive,
        },
  };
  return { inputs, listed: listedInputs(inputs, known) };
}

function listedInputs(
  inputs: FeltInputs,
  known: { relHumidityPct: number | null; clothing: string | null; activity: string | null },
): FeltInput[] {
  const clothing = known.clothing === null ? SEASON_CLOTHING_SOURCE : CLOTHING_SOURCE;
  return [
    {
      what: "Air",
      spread: inputs.airTempC,
      unit: "°C",
      origin: "measured",
      source: "the zone's sensor; the range is for its error and the distance to the desk (common practice, no source)",
    },
    {
      what: "Surfaces against the air",
      spread: inputs.radiantOffsetK,
      unit: "K",
      origin: "assumed",
      source: "taken to be as warm as the air; the range is for windows and sun (common practice, no source)",
    },
    {
      what: "Air speed",
      spread: inputs.airSpeedMps,
      unit: "m/s",
      origin: "assumed",
      source: "still to slightly moving, as in most offices (common practice, no source)",
    },
    {
      what: "Relative humidity",
      spread: inputs.relHumidityPct,
      unit: "%",
      origin: known.relHumidityPct === null ? "assumed" : "measured",
      source:
        known.relHumidityPct === null
          ? "usual in cooled offices (common practice, no source)"
          : "the recorded humidity, 5 % either way (common practice, no source)",
    },
    {
      what: "Activity",
      spread: inputs.metabolicRateMet,
      unit: "met",
      origin: known.activity === null ? "assumed" : "reported",
      source: ACTIVITY_SOURCE,
    },
    {
      what: "Clothing with chair",
      spread: inputs.clothingClo,
      unit: "clo",
      origin: known.clothing === null ? "assumed" : "reported",
      source: clothing,
    },
  ];
}
