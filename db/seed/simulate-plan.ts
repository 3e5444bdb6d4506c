import type { DemoCalendar } from "./demo-calendar";
import type { DeskHeater } from "./desk-heater";
import { deskPresence } from "./desk-presence";
import { type DevicePlan, settingPowerW } from "./device-plan";
import { normal, streamOf } from "./normal";
import { simulateZone, type ZoneRun } from "./simulate-zone";
import type { Surroundings } from "./surroundings";
import type { ZonePlan } from "./zone-plan";

export type PlannedDesk = { code: string; offsetK: number; present: Uint8Array };

/** A zone of the plan after its run: desks with their people, heaters with the times they were on. */
export type SimulatedZone = {
  plan: ZonePlan;
  desks: PlannedDesk[];
  heaters: { device: DevicePlan; on: Uint8Array }[];
  run: ZoneRun;
};

/** Air at a desk differs a little from the air of the zone [K, standard deviation]. */
const DESK_SPREAD_K = 0.25;

/** Runs one zone of the plan over a span: the same span gives the same run, whatever else is simulated. */
export function simulatePlan(
  plan: ZonePlan,
  devices: readonly DevicePlan[],
  calendar: DemoCalendar,
  around: Surroundings,
): SimulatedZone {
  const desks = Array.from({ length: plan.deskCount }, (_, desk): PlannedDesk => {
    const random = streamOf(`${plan.code}/desk/${desk}`);
    const offsetK = plan.coldDesk?.desk === desk ? plan.coldDesk.offsetK : DESK_SPREAD_K * normal(random);
    return { code: `${plan.code}-D${desk + 1}`, offsetK, present: deskPresence(calendar, random) };
  });
  const owned = devices.filter(
    ({ zoneCode, deviceClass, retiredOn }) =>
      zoneCode === plan.code && deviceClass.kind === "space-heater" && retiredOn === null,
  );
  const heaters = owned.map((device) => deskHeater(device, desks[device.desk], calendar));
  const run = simulateZone({ ...plan, desks, heaters }, calendar, around, streamOf(`${plan.code}/gains`));
  return {
    plan,
    desks,
    heaters: owned.map((device, h) => ({ device, on: run.heaterOn[h] ?? new Uint8Array(0) })),
    run,
  };
}

function deskHeater(device: DevicePlan, desk: PlannedDesk | undefined, calendar: DemoCalendar): DeskHeater {
  if (!desk) throw new RangeError(`${device.label} stands at a desk that zone ${device.zoneCode} does not have`);
  const random = streamOf(`${device.label}/days`);
  let today = -1;
  let thinksOfIt = false;
  const ownerThere = desk.present.map((present, i) => {
    if (calendar.day[i] !== today) {
      today = calendar.day[i] as number;
      thinksOfIt = random() < device.shareOfDays;
    }
    return thinksOfIt ? present : 0;
  });
  return {
    desk: device.desk,
    powerW: settingPowerW(device, device.usedSetting),
    dutyFraction: device.dutyFraction,
    onBelowC: device.onBelowC,
    ownerThere,
  };
}
