import { type DemoCalendar, type DemoSpan, demoCalendar } from "@/db/seed/demo-calendar";
import { readDemoWeather } from "@/db/seed/demo-weather";
import { devicePlans } from "@/db/seed/device-plan";
import { type SimulatedZone, simulatePlan } from "@/db/seed/simulate-plan";
import { type Surroundings, surroundings } from "@/db/seed/surroundings";
import { ZONE_PLANS } from "@/db/seed/zone-plan";

export type Simulated = { calendar: DemoCalendar; outdoor: Surroundings; zones: SimulatedZone[] };

/** Runs zones of the plan over a span, all of them unless some are named. */
export function simulated(span: DemoSpan, zoneCodes?: readonly string[]): Simulated {
  const calendar = demoCalendar(span);
  const outdoor = surroundings(readDemoWeather(), calendar);
  const devices = devicePlans();
  const plans = ZONE_PLANS.filter(({ code }) => zoneCodes?.includes(code) ?? true);
  return { calendar, outdoor, zones: plans.map((plan) => simulatePlan(plan, devices, calendar, outdoor)) };
}

/** How a zone did in its occupied hours, from an hour after they begin, as its own sensor sees it. */
export function occupiedFigures(
  { plan, run }: SimulatedZone,
  { calendar, outdoor }: Simulated,
  only: (step: number) => boolean = () => true,
) {
  const { minimumAirflowM3ps: minimum, designAirflowM3ps: design } = plan.model;
  const sum = { hours: 0, air: 0, toSetpoint: 0, cooling: 0, minimum: 0, reheat: 0, design: 0 };
  for (let i = 0; i < calendar.span.count; i++) {
    const settled = calendar.occupied[i] === 1 && (calendar.minuteOfDay[i] as number) >= 8 * 60;
    if (!settled || (outdoor.outdoorAirTempC[i] as number) < 13 || !only(i)) continue;
    const airflow = run.airflowM3ps[i] as number;
    const sensed = (run.airTempC[i] as number) + plan.sensorBiasK;
    sum.hours++;
    sum.air += sensed;
    sum.toSetpoint += sensed - (run.coolingSetpointC[i] as number);
    if ((run.valveFraction[i] as number) > 0.05) sum.reheat++;
    else if (airflow <= 1.1 * minimum) sum.minimum++;
    else sum.cooling++;
    if (airflow > 0.97 * design) sum.design++;
  }
  const share = (count: number) => count / sum.hours;
  return {
    sensedC: share(sum.air),
    trueC: share(sum.air) - plan.sensorBiasK,
    aboveSetpointK: share(sum.toSetpoint),
    coolingShare: share(sum.cooling),
    minimumShare: share(sum.minimum),
    reheatShare: share(sum.reheat),
    designShare: share(sum.design),
  };
}
