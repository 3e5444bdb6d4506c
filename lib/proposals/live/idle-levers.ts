import type { LEVER_SCALES, ZoneLever } from "../lever";
import type { LiveBuilding, LiveZone, SharedNumbers } from "../live-building";
import type { LivePicture } from "../live-picture";
import type { ActingHours } from "./acting-hours";
import type { ActingByState } from "./zone-effect";

/** Levers that change nothing where they were chosen, with why. */
export function idleLevers(
  building: Pick<LiveBuilding, "zones">,
  levers: readonly ZoneLever[],
  shared: SharedNumbers,
  acting: ActingHours,
): LivePicture["idle"] {
  const zones = new Map(building.zones.map((each) => [each.zoneId, each]));
  return levers.flatMap(({ zoneId, lever, amount }) => {
    const zone = zones.get(zoneId);
    if (!zone || amount === 0) return [];
    const reason = whyIdle(zone, lever, shared, acting.byZone.get(zoneId) ?? null);
    return reason ? [{ zoneId, code: zone.code, lever, reason }] : [];
  });
}

const NOT_THEN = "none of its hours that it acts on lie in the season and hours of the proposal";

function whyIdle(
  zone: LiveZone,
  lever: keyof typeof LEVER_SCALES,
  shared: SharedNumbers,
  acting: ActingByState | null,
): string | null {
  const never = whyNever(zone, lever, shared);
  if (never || !acting) return never;
  const hours = {
    "cooling-setpoint": acting.cooling.hours,
    "heating-setpoint": acting.reheat.hours,
    "minimum-airflow": acting.deadband.hours + acting.reheat.hours,
    "supply-air-temp": acting.deadband.hours + acting.reheat.hours,
  }[lever as string];
  return hours === 0 ? NOT_THEN : null;
}

function whyNever(zone: LiveZone, lever: keyof typeof LEVER_SCALES, shared: SharedNumbers): string | null {
  const { states, airflow, heaters } = zone;
  if (lever === "personal-device") return heaters.count > 0 ? null : "no space heater is on its register";
  if (!states) return "it has no usable record: bring in its trends first";
  if (lever === "fault-fix")
    return zone.faultHours > 0
      ? "hours of a fault carry no cost here, so that no saving can be worked out; the fix may still be right"
      : "its record shows no hours of a fault";
  if (lever === "cooling-setpoint")
    return states.cooling.hours > 0 ? null : `its trends show no hours held by the cooling setpoint${untold(zone)}`;
  if (lever === "heating-setpoint")
    return states.reheat.hours > 0 ? null : `its trends show no hours of reheat${untold(zone)}`;
  if (!airflow) return "its airflow does not vary, or a unit of its own serves it";
  if (lever === "schedule") return null;
  if (states.deadband.hours + states.reheat.hours === 0)
    return `its trends show no hours at minimum airflow${untold(zone)}`;
  if (lever === "minimum-airflow" && airflow.minimumM3ps <= shared.requiredAirflowFraction * airflow.designM3ps)
    return "its minimum is at what ventilation is taken to need already";
  return null;
}

/** Where most hours have no state, a trend is missing: the lever may act all the same, but nothing shows it. */
function untold({ states, faultHours }: LiveZone): string {
  if (!states) return "";
  const all = states.cooling.hours + states.deadband.hours + states.reheat.hours + states.other.hours;
  return states.other.hours - faultHours > all / 2
    ? "; most of its hours have no state that they tell, so that nothing is promised of it: its page names the missing trend"
    : "";
}
