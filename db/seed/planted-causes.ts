/**
 * What is wrong with each zone of the demo building, kept for tests. The product never reads it: it has to find the
 * same from the trends, the devices and the reports, or say that it cannot tell.
 */
export const DEMO_CAUSES = [
  "healthy",
  "setpoint-too-low",
  "minimum-airflow-too-high",
  "reheat-fighting",
  "biased-sensor",
  "override-left-in",
  "cold-desk",
  "too-little-airflow",
  "heater-at-thermostat",
  "packaged-unit-overshoots",
] as const;
export type DemoCause = (typeof DEMO_CAUSES)[number];

/** A trend that would tell the cause and was never set up, so that the honest answer is "undetermined". */
export type MissingTrend = "airflow" | "reheat-valve";

export type PlantedCause = { zoneCode: string; cause: DemoCause; missingTrend?: MissingTrend };

export const PLANTED_CAUSES: readonly PlantedCause[] = [
  { zoneCode: "1-01", cause: "minimum-airflow-too-high" },
  { zoneCode: "1-02", cause: "healthy" },
  { zoneCode: "1-03", cause: "cold-desk" },
  { zoneCode: "1-04", cause: "healthy" },
  { zoneCode: "1-05", cause: "setpoint-too-low" },
  { zoneCode: "1-06", cause: "setpoint-too-low" },
  { zoneCode: "1-07", cause: "biased-sensor" },
  { zoneCode: "1-08", cause: "healthy" },
  { zoneCode: "1-09", cause: "minimum-airflow-too-high" },
  { zoneCode: "1-10", cause: "reheat-fighting" },
  { zoneCode: "1-11", cause: "healthy" },
  { zoneCode: "1-12", cause: "healthy" },
  { zoneCode: "2-01", cause: "minimum-airflow-too-high" },
  { zoneCode: "2-02", cause: "reheat-fighting" },
  { zoneCode: "2-03", cause: "heater-at-thermostat" },
  { zoneCode: "2-04", cause: "setpoint-too-low", missingTrend: "airflow" },
  { zoneCode: "2-05", cause: "healthy" },
  { zoneCode: "2-06", cause: "override-left-in" },
  { zoneCode: "2-07", cause: "healthy" },
  { zoneCode: "2-08", cause: "cold-desk" },
  { zoneCode: "2-09", cause: "reheat-fighting", missingTrend: "reheat-valve" },
  { zoneCode: "2-10", cause: "minimum-airflow-too-high", missingTrend: "airflow" },
  { zoneCode: "2-11", cause: "healthy" },
  { zoneCode: "2-12", cause: "setpoint-too-low" },
  { zoneCode: "3-01", cause: "reheat-fighting" },
  { zoneCode: "3-02", cause: "healthy" },
  { zoneCode: "3-03", cause: "biased-sensor" },
  { zoneCode: "3-04", cause: "healthy" },
  { zoneCode: "3-05", cause: "setpoint-too-low" },
  { zoneCode: "3-06", cause: "too-little-airflow" },
  { zoneCode: "3-07", cause: "too-little-airflow" },
  { zoneCode: "3-08", cause: "override-left-in" },
  { zoneCode: "3-09", cause: "packaged-unit-overshoots" },
  { zoneCode: "3-10", cause: "minimum-airflow-too-high" },
  { zoneCode: "3-11", cause: "healthy" },
  { zoneCode: "3-12", cause: "healthy" },
];
