import { AIR_SIDE_ASSUMPTIONS } from "./air-side";
import type { Assumption } from "./assumption";
import { COOLING_LOAD_ASSUMPTIONS } from "./cooling-load";
import { COOLING_PLANT_ASSUMPTIONS } from "./cooling-plant";
import { DEMAND_ASSUMPTIONS } from "./demand";
import { EMISSION_ASSUMPTIONS } from "./emissions";
import { FINANCE_ASSUMPTIONS } from "./finance";
import { HEATING_PLANT_ASSUMPTIONS } from "./heating-plant";
import { PERSISTENCE_ASSUMPTIONS } from "./persistence";
import { PRICE_ASSUMPTIONS } from "./prices";
import { SCREENING_ASSUMPTIONS } from "./screening";
import { SETPOINT_RESPONSE_ASSUMPTIONS } from "./setpoint-response";
import { SPACE_HEATER_ASSUMPTIONS } from "./space-heaters";
import { STATE_SHARE_ASSUMPTIONS } from "./state-shares";
import { ZONE_SENSOR_ASSUMPTIONS } from "./zone-sensor";

/** Every value that the tool takes as given, by subject. Ids are unique. */
export const ALL_ASSUMPTIONS: readonly Assumption[] = [
  ...COOLING_LOAD_ASSUMPTIONS,
  ...COOLING_PLANT_ASSUMPTIONS,
  ...AIR_SIDE_ASSUMPTIONS,
  ...STATE_SHARE_ASSUMPTIONS,
  ...HEATING_PLANT_ASSUMPTIONS,
  ...SPACE_HEATER_ASSUMPTIONS,
  ...ZONE_SENSOR_ASSUMPTIONS,
  ...SETPOINT_RESPONSE_ASSUMPTIONS,
  ...DEMAND_ASSUMPTIONS,
  ...SCREENING_ASSUMPTIONS,
  ...PRICE_ASSUMPTIONS,
  ...PERSISTENCE_ASSUMPTIONS,
  ...FINANCE_ASSUMPTIONS,
  ...EMISSION_ASSUMPTIONS,
];

const byId = new Map(ALL_ASSUMPTIONS.map((each) => [each.id, each]));

/** The default assumption of an id, or undefined for an id that is none. */
export const findAssumption = (id: string): Assumption | undefined => byId.get(id);
