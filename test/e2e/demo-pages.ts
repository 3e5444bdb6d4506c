import { demoPath } from "./fixtures";

/** Every page for facilities staff, on the demo building. */
export const FACILITIES_PAGES: readonly string[] = [
  demoPath().replace(/\/1$/, ""),
  demoPath().replace(/\/1$/, "/new"),
  ...[
    "",
    "/zones",
    "/zones/1",
    "/zones/1/data-quality",
    "/data-quality",
    "/devices",
    "/devices/1",
    "/devices/new",
    "/devices/new?sort=fan-heater-1500",
    "/comfort-reports",
    "/comfort-reports/1",
    "/comfort-reports/links",
    "/imports",
    "/imports/mapping",
    "/assumptions",
    "/working",
    "/working/heater-energy",
    "/working/heater-energy?at=0",
    "/settings",
    "/tariff",
    "/target",
    "/energy-meter",
  ].map(demoPath),
];
