import type { SeasonRecord } from "@/lib/comfort-reports/both-sides/season-record";
import { VOTE_PRIORS } from "@/lib/comfort-reports/both-sides/vote-prior";
import { type LiveBuilding, type LiveZone, SHARED_VALUES, type SharedName } from "@/lib/proposals/live-building";

/** The shared values of the reference's worked building, with nothing uncertain. */
const HALL: Record<SharedName, number> = {
  heatLossPerArea: 1.0824,
  cop: 3.51685,
  mechanicalFraction: 0.7987,
  supplyAirTemp: 13,
  returnAirTemp: 22,
  heatEfficiency: 0.75,
  requiredAirflowFraction: 0.12,
  outdoorAirPerArea: 0.000425,
  fanPowerPerAirflow: 2,
  fanSavingFactor: 1,
  heaterInSeasonFraction: 0.7,
  heaterRemovalFraction: 0.5,
  changeKeptFraction: 1,
  electricityPrice: 0.085,
  electricityEmissions: 0.348,
  heatEmissions: 0.181,
};

const SYMBOLS: Record<SharedName, string> = {
  heatLossPerArea: "u",
  cop: "COP",
  mechanicalFraction: "m",
  supplyAirTemp: "T_sat",
  returnAirTemp: "T_ra",
  heatEfficiency: "η",
  requiredAirflowFraction: "r_req",
  outdoorAirPerArea: "o",
  fanPowerPerAirflow: "w_f",
  fanSavingFactor: "k_f",
  heaterInSeasonFraction: "f_o",
  heaterRemovalFraction: "r_h",
  changeKeptFraction: "r_s",
  electricityPrice: "p_e",
  electricityEmissions: "e_e",
  heatEmissions: "e_q",
};

/** April to October, 07:00 to 18:00, every hour of them as likely as any other, all of it cooled by the plant. */
const SEASON: LiveBuilding["calendar"] = {
  binsC: [18],
  cells: Array.from({ length: 77 }, (_, k) => [4 + Math.floor(k / 11), 7 + (k % 11), 0, 20, 20] as const),
};

const TEMPS_C = [22, 22.5, 23, 23.5, 24, 24.5, 25];

/** Hours of a state all at one temperature. */
export function stateAt(hours: number, zoneAirTempC: number): NonNullable<LiveZone["states"]>["cooling"] {
  const hoursBelow = TEMPS_C.map((each) => (zoneAirTempC < each ? hours : 0));
  return { hours, hoursByBin: [hours], zoneAirTempC, hoursBelow, lowTailK: zoneAirTempC < 22 ? 22 - zoneAirTempC : 0 };
}

/** A zone like the worked building as one: 5,000 m², 1,912.86 occupied season hours, minimum 30 % of 20 m³/s. */
export function liveZone(changes: Partial<LiveZone> = {}): LiveZone {
  return {
    zoneId: 1,
    code: "1-01",
    floorAreaM2: 5000,
    states: {
      cooling: stateAt(765.144, 21.5),
      deadband: stateAt(669.501, 20.8),
      reheat: stateAt(478.215, 21),
      other: stateAt(0, 23),
    },
    faultHours: 0,
    targetZoneAirTempC: 23.5,
    coolingSetpointC: 23.5,
    heatingSetpointC: 21,
    airflow: { designM3ps: 20, minimumM3ps: 6, coolingM3ps: 9 },
    heaters: { count: 40, energyKwh: 14_394.72, highPowerW: 60_000 },
    desks: 200,
    ...changes,
  };
}

/** Desk-hours of the zones at whole degrees, with 24 person-days too cold and 3 too warm in each. */
export const seasonRecord = (zones: readonly LiveZone[]): SeasonRecord => ({
  prior: VOTE_PRIORS.summer,
  zones: zones.map(({ zoneId, desks }) => {
    const hours = ([20, 21, 22, 23] as const).map((airTempC) => [airTempC, desks * 478] as const);
    return {
      zoneId,
      floor: "1",
      sinceReports: hours,
      lastYear: hours,
      counts: [
        [21, 24, 0],
        [23, 0, 3],
      ],
    };
  }),
});

export function liveBuilding(
  zones: LiveZone[] = [liveZone()],
  changes: Partial<LiveBuilding> = {},
  numbers: Partial<Record<SharedName, number>> = {},
): LiveBuilding {
  const values = { ...HALL, ...numbers };
  return {
    currency: "USD",
    tier: 2,
    tierLabel: "measured zones, modelled plant",
    shared: Object.fromEntries(
      SHARED_VALUES.map((name) => [
        name,
        {
          term: { symbol: SYMBOLS[name], label: name, value: values[name], unit: "", origin: "default" },
          draws: Array.from({ length: 20 }, () => values[name]),
        },
      ]),
    ) as unknown as LiveBuilding["shared"],
    heatPricePerKwh: 1 / 29.3071,
    isHeatElectric: false,
    costPerReport: 55,
    occupiedDays: 260,
    calendar: SEASON,
    reports: seasonRecord(zones),
    circuits: [],
    tempsC: TEMPS_C,
    comfort: { lowerC: 22, upperC: 26, source: "test" },
    zones,
    ...changes,
  };
}
