import type { Assumption } from "./assumption";
import { entry, judgement } from "./entry";

/** What becomes of a saving: waste that exists is not yet waste that goes. */
export const PERSISTENCE_ASSUMPTIONS: readonly Assumption[] = [
  entry({
    id: "heater-removal-fraction",
    label: "share of the space heaters' energy that people give up once their zone is warm enough",
    value: 0.5,
    low: 0,
    high: 1,
    unit: "",
    source: judgement("heaters do not vanish by themselves; ask again at desks after 4 and 12 weeks"),
    appliesTo: "the part of the heaters' cost that can be avoided",
  }),
  entry({
    id: "change-life",
    label: "time until a changed setpoint or minimum airflow is changed back",
    value: 3,
    low: 1,
    high: 5,
    unit: "years",
    source: judgement("operators revert; a setpoint is not a ten-year measure"),
    appliesTo: "the part of the cost that a change saves in its first year",
  }),
];
