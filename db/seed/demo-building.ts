import { m2FromFt2 } from "@/lib/units/area";
import { DEMO_TIME_ZONE } from "./demo-calendar";

/** The demo building's own row. Name, town, prices and hours a complaint are invented; prices are of a usual size. */
export const DEMO_BUILDING = {
  name: "Quarry Court, Harrowfen",
  timeZone: DEMO_TIME_ZONE,
  currency: "USD",
  temperatureUnit: "F",
  areaUnit: "ft2",
  /** 48,500 ft², gross: the zones' 4,500 m² lie within it. */
  floorAreaM2: m2FromFt2(48_500),
  systemType: "vav-reheat-high-minimum",
  hasEconomizer: true,
  heatingFuel: "gas",
  electricityPriceKind: "marginal",
  electricityPricePerKwh: 0.092,
  demandPricePerKw: 11.5,
  demandMonths: 5,
  /** 1.12 a therm. */
  heatPricePerKwh: 0.0382,
  complaintHours: 0.3,
  labourPricePerHour: 42,
  targetZoneAirTempC: 23,
  mainsVoltageV: 120,
} as const;

/** Who made the demo's entries, as its records show it. */
export const DEMO_AUTHOR = "demo building";
