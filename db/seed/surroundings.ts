import type { DemoCalendar } from "./demo-calendar";
import type { DemoWeather } from "./demo-weather";
import { type OutdoorConditions, outdoorConditions } from "./outdoor-conditions";
import { simulatePlan } from "./simulate-plan";
import { ZONE_PLANS } from "./zone-plan";

/** What a zone meets: weather, supply air, and the air of the rest of the building. */
export type Surroundings = OutdoorConditions & { interiorAirTempC: Float64Array };

/** Sound zones, one to each side and one of the core, whose mean stands for the rest of the building. */
const TYPICAL_ZONES = ["1-02", "1-04", "1-08", "1-11", "2-05"];
const FIRST_GUESS_C = 23;

/**
 * Surroundings of the zones over a span. Every zone meets the same interior air, that of sound zones run by
 * themselves, so that each can be run alone: a simplification of neighbours that act on each other.
 */
export function surroundings(weather: DemoWeather, calendar: DemoCalendar): Surroundings {
  const outdoor = outdoorConditions(weather, calendar.span);
  const { count } = calendar.span;
  const guess = { ...outdoor, interiorAirTempC: new Float64Array(count).fill(FIRST_GUESS_C) };
  const interiorAirTempC = new Float64Array(count);
  for (const plan of ZONE_PLANS.filter(({ code }) => TYPICAL_ZONES.includes(code))) {
    const alone = { ...plan, model: { ...plan.model, partitionWpK: 0 } };
    const { airTempC } = simulatePlan(alone, [], calendar, guess).run;
    for (let i = 0; i < count; i++)
      interiorAirTempC[i] = (interiorAirTempC[i] as number) + (airTempC[i] as number) / TYPICAL_ZONES.length;
  }
  return { ...outdoor, interiorAirTempC };
}
