import type { Assumption } from "./assumption";
import { entry, judgement } from "./entry";

/** What decides how much heat an office gains and loses. */
export const COOLING_LOAD_ASSUMPTIONS: readonly Assumption[] = [
  entry({
    id: "building-heat-loss-per-area",
    label: "heat loss coefficient of envelope and outdoor air, per floor area",
    value: 1.1,
    low: 0.6,
    high: 2.0,
    unit: "W/m²K",
    source: judgement(
      "large interior-dominated floors low, glazed shallow plans high; outdoor air at 0.425 L/s·m² is 0.51 W/m²K of it",
    ),
    appliesTo: "cooling for setpoints and at minimum airflow, demand",
  }),
  entry({
    id: "internal-gain-per-area",
    label: "heat from people, lights, equipment and sun, mean of occupied hours, without space heaters",
    value: 18,
    low: 10,
    high: 30,
    unit: "W/m²",
    source: judgement("usual span of occupied means in offices"),
    appliesTo: "balance temperature of the degree-hour estimate",
  }),
  entry({
    id: "outdoor-airflow-per-area",
    label: "outdoor air that the air handlers take in, per floor area",
    value: 0.000425,
    low: 0.0003,
    high: 0.0008,
    unit: "m³/s·m²",
    source: {
      title: "ASHRAE Standard 62.1, office rates: 2.5 L/s a person, 0.3 L/s·m², 5 people per 100 m²",
      place: "ventilation rate table; the span round it is engineering judgement",
      confidence: "from-memory",
    },
    appliesTo: "share of heaters' heat that leaves with exhausted air",
  }),
];
