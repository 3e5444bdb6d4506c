import { isVav } from "@/lib/assumptions/system-type";
import type { AssessedZone, AssessmentInput } from "@/lib/overcooling/assessment-input";
import { assessmentRows } from "@/lib/overcooling/rows";
import { annualHoursByBin } from "@/lib/trends/annualise";
import type { AnnualBin } from "@/lib/trends/outdoor-bins";
import type { AnnualExposure, ZoneExposure } from "@/lib/trends/zone-exposure";
import { OCCUPIED_STATES, type OccupiedState } from "@/lib/trends/zone-state";
import { LIVE_STATES, type LiveState, type LiveStateName, type LiveZone } from "./live-building";
import { hoursByBin, type SeasonCalendar } from "./season-calendar";

/** What the assessment does not hold of a zone. */
export type ZoneFacts = {
  coolingSetpointC: number | null;
  heatingSetpointC: number | null;
  desks: number;
};

export function gatherLiveZones(
  input: AssessmentInput,
  facts: ReadonlyMap<number, ZoneFacts>,
  tempsC: readonly number[],
  calendar: SeasonCalendar,
): LiveZone[] {
  const hours = hoursByBin(calendar);
  const year = calendar.binsC.map((lowC, bin): AnnualBin => ({ lowC, hours: hours[bin] ?? 0 }));
  return assessmentRows(input).rows.flatMap((row): LiveZone[] => {
    const { zone, zoneId } = row;
    if (!zone || zoneId === null) return [];
    const known = facts.get(zoneId);
    const targetC = zone.targetZoneAirTempC ?? input.targetZoneAirTempC;
    const record = row.record?.exposure ? { annual: row.record.annual, exposure: row.record.exposure } : null;
    return [
      {
        zoneId,
        code: row.code,
        floorAreaM2: row.floorAreaM2,
        states: record && statesOf({ ...record, year }, tempsC, targetC),
        faultHours: record?.annual.byState.fault.hours ?? 0,
        targetZoneAirTempC: targetC,
        coolingSetpointC: known?.coolingSetpointC ?? null,
        heatingSetpointC: known?.heatingSetpointC ?? null,
        airflow: record && isVav(input.systemType) ? airflowOf(zone, record.exposure) : null,
        heaters: {
          count: row.heaters.length,
          energyKwh: row.heaters.reduce((sum, each) => sum + each.energyKwhPerYear.value, 0),
          highPowerW: row.heaters.reduce((sum, each) => sum + each.highPowerW, 0),
        },
        desks: known?.desks ?? 0,
      },
    ];
  });
}

/** Which states of the record a state of the proposal gathers. */
const GATHERED: Record<LiveStateName, readonly OccupiedState[]> = {
  cooling: ["cooling"],
  deadband: ["deadband"],
  reheat: ["reheat"],
  other: ["fault", "undetermined"],
};

type Recorded = { annual: AnnualExposure; exposure: ZoneExposure; year: readonly AnnualBin[] };

function statesOf(record: Recorded, tempsC: readonly number[], targetC: number): NonNullable<LiveZone["states"]> {
  const byBin = annualHoursByBin(record.exposure, record.year);
  return Object.fromEntries(
    LIVE_STATES.map((name) => [name, stateOf(record, byBin, GATHERED[name], tempsC, targetC)]),
  ) as NonNullable<LiveZone["states"]>;
}

/** Recorded hours are carried to the year by the year's hours in the state over the recorded ones. */
function stateOf(
  { annual, exposure }: Recorded,
  byBin: readonly Record<OccupiedState, number>[],
  states: readonly OccupiedState[],
  tempsC: readonly number[],
  targetC: number,
): LiveState {
  const hours = states.reduce((sum, state) => sum + annual.byState[state].hours, 0);
  const scale = (state: OccupiedState): number => {
    const recorded = exposure.byState[state].hours;
    return recorded > 0 ? annual.byState[state].hours / recorded : 0;
  };
  const at = (airTempC: number, key: "hoursBelowTarget" | "overcoolingKh"): number => {
    const target = exposure.byTarget.find((each) => each.targetZoneAirTempC === airTempC);
    return states.reduce((sum, state) => sum + scale(state) * (target?.[key][OCCUPIED_STATES.indexOf(state)] ?? 0), 0);
  };
  const first = tempsC[0] as number;
  const below = at(first, "hoursBelowTarget");
  const weighted = states.reduce(
    (sum, state) => sum + annual.byState[state].hours * (exposure.byState[state].meanZoneAirTempC ?? targetC),
    0,
  );
  return {
    hours,
    hoursByBin: byBin.map((bin) => states.reduce((sum, state) => sum + bin[state], 0)),
    zoneAirTempC: hours > 0 ? weighted / hours : targetC,
    hoursBelow: tempsC.map((each) => Math.min(hours, at(each, "hoursBelowTarget"))),
    lowTailK: below > 0 ? at(first, "overcoolingKh") / below : 0,
  };
}

/** Null where the minimum or design airflow is not known, and where a unit of its own serves the zone. */
function airflowOf(zone: AssessedZone, exposure: ZoneExposure): LiveZone["airflow"] {
  const { designAirflowM3ps: designM3ps, minimumAirflowM3ps: minimumM3ps } = zone;
  if (exposure.hasTrend.coolingStage || designM3ps === null || minimumM3ps === null) return null;
  const coolingM3ps = exposure.byState.cooling.meanAirflowM3ps ?? Math.max(minimumM3ps, 0.5 * designM3ps);
  return { designM3ps, minimumM3ps, coolingM3ps };
}
