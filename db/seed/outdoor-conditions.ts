import { type DemoSpan, hourOfYear, STEP_SECONDS } from "./demo-calendar";
import { type DemoWeather, HOURS_IN_WEATHER_YEAR } from "./demo-weather";
import { cosIncidence, cosZenith, type FACADE_AZIMUTH_DEG, type Facade, sunAngles } from "./sun";

/** Weather and supply air on the steps of a span. */
export type OutdoorConditions = {
  outdoorAirTempC: Float64Array;
  outdoorDewPointC: Float64Array;
  /** Sun on a vertical wall, by the way it looks. */
  wallIrradianceWpm2: Record<Facade, Float64Array>;
  /** Supply air of the air handler while it runs. */
  supplyAirTempC: Float64Array;
};

const GROUND_REFLECTANCE = 0.2;
/** No beam below this altitude: neighbouring buildings and trees hide it (about 5°). */
const LEAST_COS_ZENITH = 0.087;

/** Brings the typical year onto the steps of a span, between its hours in a straight line. */
export function outdoorConditions(weather: DemoWeather, span: DemoSpan): OutdoorConditions {
  const hours = Float64Array.from({ length: span.count }, (_, i) =>
    hourOfYear(span.startUtcSeconds + i * STEP_SECONDS, weather.utcOffsetHours),
  );
  // Temperatures are read at the end of their hour, radiation is the mean of it and stands in its middle.
  const outdoorAirTempC = hours.map((hour) => between(weather.dryBulbC, hour - 1));
  const onWall = (facade: Facade): Float64Array => {
    const hourly = wallIrradiance(weather, facade);
    return hours.map((hour) => between(hourly, hour - 0.5));
  };
  return {
    outdoorAirTempC,
    outdoorDewPointC: hours.map((hour) => between(weather.dewPointC, hour - 1)),
    wallIrradianceWpm2: { north: onWall("north"), east: onWall("east"), south: onWall("south"), west: onWall("west") },
    supplyAirTempC: outdoorAirTempC.map(supplyAirTempFor),
  };
}

/** 13 °C in warm weather, reset by outdoor air up to 14.5 °C. */
export function supplyAirTempFor(outdoorAirTempC: number): number {
  return 13 + 1.5 * Math.min(1, Math.max(0, (18 - outdoorAirTempC) / 10));
}

/** Hourly sun on a wall: beam by the angle of incidence, half of the sky, half of what the ground sends back. */
function wallIrradiance(weather: DemoWeather, facade: keyof typeof FACADE_AZIMUTH_DEG): Float64Array {
  return Float64Array.from({ length: HOURS_IN_WEATHER_YEAR }, (_, hour) => {
    const sun = sunAngles({ ...weather, hourOfYear: hour + 0.5 });
    const beam = cosZenith(sun) > LEAST_COS_ZENITH ? Math.max(0, cosIncidence(sun, facade)) : 0;
    return (
      (weather.directNormalWpm2[hour] as number) * beam +
      0.5 * (weather.diffuseHorizontalWpm2[hour] as number) +
      0.5 * GROUND_REFLECTANCE * (weather.globalHorizontalWpm2[hour] as number)
    );
  });
}

/** Value at a fractional index of a year that closes on itself. */
function between(hourly: Float64Array, index: number): number {
  const low = Math.floor(index);
  const at = (i: number) => hourly[(i + HOURS_IN_WEATHER_YEAR) % HOURS_IN_WEATHER_YEAR] as number;
  return at(low) + (index - low) * (at(low + 1) - at(low));
}
