import type { Assumption } from "./assumption";
import { COMSTOCK, entry, judgement } from "./entry";
import { SYSTEM_LABELS, SYSTEM_TYPES, type SystemType } from "./system-type";

const CHILLERS = {
  ...COMSTOCK,
  place:
    "air-cooled chillers IPLV 0.857 to 0.876 kW/ton (2.4 to 4.2 on site); top of the span: water-cooled plant of 4.8 less its pumps and towers",
};
const PACKAGED = { ...COMSTOCK, place: "packaged cooling of 65 to 135 kBtu/h, EER 11.0, IEER 12.7" };

const COP: Record<SystemType, Pick<Assumption, "value" | "low" | "high" | "source">> = {
  "vav-reheat-high-minimum": { value: 3.3, low: 2.4, high: 4.8, source: CHILLERS },
  "vav-reheat-low-minimum": { value: 3.3, low: 2.4, high: 4.8, source: CHILLERS },
  "vav-reheat-minimum-unknown": { value: 3.3, low: 2.4, high: 4.8, source: CHILLERS },
  "single-zone-dx": { value: 3.3, low: 2.6, high: 4.0, source: PACKAGED },
  "fan-coil": { value: 3.3, low: 2.4, high: 4.8, source: CHILLERS },
  "heat-pump": { value: 3.8, low: 3.0, high: 5.0, source: judgement("seasonal values of split and VRF units") },
};

/** Seasonal efficiency of the cooling plant, with pumps and condenser, without supply fans. */
export const COOLING_PLANT_ASSUMPTIONS: readonly Assumption[] = SYSTEM_TYPES.map((system) =>
  entry({
    id: `cooling-cop/${system}`,
    label: `seasonal COP of the cooling plant, ${SYSTEM_LABELS[system]}`,
    ...COP[system],
    unit: "kWh/kWh",
    appliesTo: "every kWh of cooling",
  }),
);
