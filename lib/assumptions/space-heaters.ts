import type { Assumption } from "./assumption";
import { entry, judgement } from "./entry";

/** How the space heaters found relate to overcooling. */
export const SPACE_HEATER_ASSUMPTIONS: readonly Assumption[] = [
  entry({
    id: "heater-in-overcooled-hours-fraction",
    label: "share of space heater energy used in cooling-season occupied hours",
    value: 0.6,
    low: 0.3,
    high: 0.9,
    unit: "",
    source: judgement("winter use of heaters is not overcooling; a logger through the year would tell"),
    appliesTo: "space heaters' energy and the cooling that removes their heat",
  }),
  entry({
    id: "heater-heat-removed-fraction",
    label: "share of heaters' heat that the cooling plant removes, without weather and trends",
    value: 0.8,
    low: 0.6,
    high: 1,
    unit: "",
    source: judgement(
      "above the all-year 0.65 of Sezgen & Huang 1994 (large office, Chicago), since these heaters run in the cooling season",
    ),
    appliesTo: "cooling that removes heaters' heat, screening only",
  }),
  entry({
    id: "heater-heat-useful-fraction",
    label: "share of heaters' heat that replaces heat of the plant, without weather and trends",
    value: 0.1,
    low: 0,
    high: 0.3,
    unit: "",
    source: judgement("below the all-year 0.23 of Sezgen & Huang 1994 (large office, Chicago)"),
    appliesTo: "credit for reheat that heaters replace, screening only",
  }),
  entry({
    id: "heater-winter-useful-fraction",
    label: "share of heaters' heat outside the cooling season that replaces heat of the plant",
    value: 1,
    low: 0.5,
    high: 1,
    unit: "",
    source: judgement(
      "all of it while perimeter heating holds the zone (steady balance); half or less in unoccupied hours",
    ),
    appliesTo: "net cost of space heaters outside the cooling season, which is shown beside the cost of overcooling",
  }),
];
