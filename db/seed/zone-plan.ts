import { startOfLocalDate } from "./demo-calendar";
import { type DemoCause, type MissingTrend, PLANTED_CAUSES, type PlantedCause } from "./planted-causes";
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
  /** A box of the air handler, or a packaged unit of its own. */
  unit: "box" | "packaged";
  model: ZoneModel;
  programme: ZoneProgramme;
  sensorBiasK: number;
  /** What the zone's first heater adds to the thermostat's reading while it is on [K]. */
  heaterAtSensorK: number;
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
  "heater-at-thermostat": SOUND,
  "packaged-unit-overshoots": { ...SOUND, coolingSetpointF: 70.5, heatingSetpointF: 67 },
  "setpoint-too-low": { ...SOUND, coolingSetpointF: 70.5, heatingSetpointF: 68 },
  "minimum-airflow-too-high": {
    coolingSetpointF: 75,
    heatingSetpointF: 68,
    minimumFraction: { perimeter: 0.64, core: 0.64 },
  },
  "reheat-fighting": { coolingSetpointF: 75, heatingSetpointF: 72, minimumFraction: { perimeter: 0.9, core: 0.72 } },
};

/** What a planted cause is made with: the demo's own figures, and others for buildings that nothing was tuned on. */
export type PlanKnobs = {
  /** Above the setpoints of the cause [°F]. */
  variationF: number;
  /** Times the minimum airflow of the cause. */
  minimumFactor: number;
  sensorBiasK: number;
  override: { from: string; dropK: number };
  /** Share of the airflow that the load needs which an undersized box was given. */
  undersized: number;
  coldDesk: { desk: number; offsetK: number };
  /** What a heater at the thermostat adds to its reading [K]. */
  heaterAtSensorK: number;
};

const OVERRIDE_FROM: Record<string, string> = { "2-06": "2026-05-11", "3-08": "2026-03-02" };

const DEMO_KNOBS: Omit<PlanKnobs, "variationF" | "override"> = {
  minimumFactor: 1,
  sensorBiasK: 1.8,
  undersized: 0.27,
  coldDesk: { desk: 2, offsetK: -3 },
  heaterAtSensorK: 2.2,
};
/** A packaged unit is chosen by the largest room of the catalogue: how much more air it moves than its zone needs. */
const PACKAGED_OVERSIZE = 2.5;

const celsius = (tempF: number): number => (tempF - 32) / 1.8;

/** A zone by what is planted in it. */
export function zonePlan({ zoneCode, cause, missingTrend }: PlantedCause, knobs: PlanKnobs): ZonePlan {
  const [floor = "", number = ""] = zoneCode.split("-");
  const position = POSITIONS[Number(number) - 1];
  if (!position) throw new RangeError(`zone ${zoneCode} has no place on the floor`);
  const { facade } = position;
  const settings = SETTINGS[cause];
  const floorAreaM2 = facade ? PERIMETER_AREA_M2 : CORE_AREA_M2;
  const packaged = cause === "packaged-unit-overshoots";
  const size = cause === "too-little-airflow" ? knobs.undersized : packaged ? PACKAGED_OVERSIZE : 1;
  return {
    code: zoneCode,
    name: `${FLOOR_NAMES[floor.at(-1) ?? ""]}, ${position.place}`,
    floor,
    floorAreaM2,
    deskCount: (DESKS_IN_SPARSE_ZONES[cause] ?? DESKS)[facade ? "perimeter" : "core"],
    cause,
    missingTrend: missingTrend ?? null,
    unit: packaged ? "packaged" : "box",
    model: zoneModel({
      floorAreaM2,
      facade,
      underRoof: floor.endsWith("3"),
      neededAirflowM3ps: position.designAirflowM3ps,
      designAirflowM3ps: position.designAirflowM3ps * size,
      minimumFraction: settings.minimumFraction[facade ? "perimeter" : "core"] * knobs.minimumFactor,
    }),
    programme: {
      coolingSetpointC: celsius(settings.coolingSetpointF + knobs.variationF),
      heatingSetpointC: celsius(settings.heatingSetpointF),
      override:
        cause === "override-left-in"
          ? { fromUtcSeconds: startOfLocalDate(knobs.override.from) + 39_600, dropK: knobs.override.dropK }
          : null,
    },
    sensorBiasK: cause === "biased-sensor" ? knobs.sensorBiasK : 0,
    heaterAtSensorK: cause === "heater-at-thermostat" ? knobs.heaterAtSensorK : 0,
    coldDesk: cause === "cold-desk" ? knobs.coldDesk : null,
  };
}

/** The zones of the demo building, in the order of their codes. Setpoints lie up to a degree Fahrenheit apart, as they drift. */
export const ZONE_PLANS: readonly ZonePlan[] = PLANTED_CAUSES.map((planted, index) =>
  zonePlan(planted, {
    ...DEMO_KNOBS,
    variationF: 0.5 * (index % 3),
    override: { from: OVERRIDE_FROM[planted.zoneCode] ?? "2026-05-11", dropK: 2 },
  }),
);
