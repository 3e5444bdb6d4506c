import { startOfLocalDate } from "./demo-calendar";
import { type DemoCause, type MissingTrend, PLANTED_CAUSES } from "./planted-causes";
import type { Facade } from "./sun";
import { type ZoneModel, zoneModel } from "./zone-model";
import type { ZoneProgramme } from "./zone-setpoints";

/** A zone of the demo building: what a register of zones knows of it, and what only the simulation knows. */
export type ZonePlan = {
  code: string;
  name: string;
  floor: string;
  floorAreaM2: number;
  deskCount: number;
  cause: DemoCause;
  missingTrend: MissingTrend | null;
  model: ZoneModel;
  programme: ZoneProgramme;
  sensorBiasK: number;
  /** Desk (by index) in the draught of a diffuser and how much colder it is there; null in most zones. */
  coldDesk: { desk: number; offsetK: number } | null;
};

/** Twelve zones a floor: two along each side, four in the core. Design airflow is sized for sun, people and lights. */
const POSITIONS: readonly { place: string; facade: Facade | null; designAirflowM3ps: number }[] = [
  { place: "north side, west half", facade: "north", designAirflowM3ps: 0.38 },
  { place: "north side, east half", facade: "north", designAirflowM3ps: 0.38 },
  { place: "east side, north half", facade: "east", designAirflowM3ps: 0.63 },
  { place: "east side, south half", facade: "east", designAirflowM3ps: 0.63 },
  { place: "south side, east half", facade: "south", designAirflowM3ps: 0.63 },
  { place: "south side, west half", facade: "south", designAirflowM3ps: 0.63 },
  { place: "west side, south half", facade: "west", designAirflowM3ps: 0.63 },
  { place: "west side, north half", facade: "west", designAirflowM3ps: 0.63 },
  { place: "core, north-west", facade: null, designAirflowM3ps: 0.46 },
  { place: "core, north-east", facade: null, designAirflowM3ps: 0.46 },
  { place: "core, south-east", facade: null, designAirflowM3ps: 0.46 },
  { place: "core, south-west", facade: null, designAirflowM3ps: 0.46 },
];
const FLOOR_NAMES: Record<string, string> = { "1": "First floor", "2": "Second floor", "3": "Third floor" };
export const PERIMETER_AREA_M2 = 110;
export const CORE_AREA_M2 = 155;
const DESKS = { perimeter: 6, core: 8 };
/** Fewer desks where a zone is mostly meeting rooms or files: little heat, which a high minimum airflow overcomes. */
const DESKS_IN_SPARSE_ZONES: Partial<Record<DemoCause, { perimeter: number; core: number }>> = {
  "reheat-fighting": { perimeter: 3, core: 4 },
  "minimum-airflow-too-high": { perimeter: 5, core: 6 },
};

type Settings = {
  coolingSetpointF: number;
  heatingSetpointF: number;
  /** Minimum airflow as a share of design: at the perimeter and in the core. */
  minimumFraction: { perimeter: number; core: number };
};

const SOUND: Settings = {
  coolingSetpointF: 74,
  heatingSetpointF: 71,
  minimumFraction: { perimeter: 0.1, core: 0.13 },
};

/** How the controls of a zone are set, by what is wrong with it; the setpoint varies a little from zone to zone. */
const SETTINGS: Record<DemoCause, Settings> = {
  healthy: SOUND,
  "cold-desk": SOUND,
  "biased-sensor": SOUND,
  "override-left-in": SOUND,
  "too-little-airflow": SOUND,
  "setpoint-too-low": { ...SOUND, coolingSetpointF: 70.5, heatingSetpointF: 68 },
  "minimum-airflow-too-high": {
    coolingSetpointF: 75,
    heatingSetpointF: 68,
    minimumFraction: { perimeter: 0.64, core: 0.64 },
  },
  "reheat-fighting": { coolingSetpointF: 75, heatingSetpointF: 72, minimumFraction: { perimeter: 0.9, core: 0.72 } },
};

const SENSOR_BIAS_K = 1.8;
const OVERRIDE_DROP_K = 2;
const OVERRIDE_FROM: Record<string, string> = { "2-06": "2026-05-11", "3-08": "2026-03-02" };
/** Share of the airflow that the load needs which an undersized box was given. */
const UNDERSIZED = 0.27;

const celsius = (tempF: number): number => (tempF - 32) / 1.8;

/** The zones of the demo building, in the order of their codes. */
export const ZONE_PLANS: readonly ZonePlan[] = PLANTED_CAUSES.map(({ zoneCode, cause, missingTrend }, index) => {
  const [floor = "", number = ""] = zoneCode.split("-");
  const position = POSITIONS[Number(number) - 1];
  if (!position) throw new RangeError(`zone ${zoneCode} has no place on the floor`);
  const { facade } = position;
  const settings = SETTINGS[cause];
  const floorAreaM2 = facade ? PERIMETER_AREA_M2 : CORE_AREA_M2;
  const overriddenFrom = OVERRIDE_FROM[zoneCode];
  // Up to a degree Fahrenheit apart, as such settings drift over the years.
  const variationF = 0.5 * (index % 3);
  return {
    code: zoneCode,
    name: `${FLOOR_NAMES[floor]}, ${position.place}`,
    floor,
    floorAreaM2,
    deskCount: (DESKS_IN_SPARSE_ZONES[cause] ?? DESKS)[facade ? "perimeter" : "core"],
    cause,
    missingTrend: missingTrend ?? null,
    model: zoneModel({
      floorAreaM2,
      facade,
      underRoof: floor === "3",
      neededAirflowM3ps: position.designAirflowM3ps,
      designAirflowM3ps: position.designAirflowM3ps * (cause === "too-little-airflow" ? UNDERSIZED : 1),
      minimumFraction: settings.minimumFraction[facade ? "perimeter" : "core"],
    }),
    programme: {
      coolingSetpointC: celsius(settings.coolingSetpointF + variationF),
      heatingSetpointC: celsius(settings.heatingSetpointF),
      override: overriddenFrom
        ? { fromUtcSeconds: startOfLocalDate(overriddenFrom) + 39_600, dropK: OVERRIDE_DROP_K }
        : null,
    },
    sensorBiasK: cause === "biased-sensor" ? SENSOR_BIAS_K : 0,
    coldDesk: cause === "cold-desk" ? { desk: 2, offsetK: -3 } : null,
  };
});
