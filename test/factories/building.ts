import type { BuildingInput } from "@/lib/services/buildings/building-input";

const workday = [{ startMinute: 7 * 60, endMinute: 18 * 60 }];

/** A building as a facilities manager would set it up; tests change what they are about. */
export function buildingInputOf(changes: Partial<BuildingInput> = {}): BuildingInput {
  return {
    name: "Alder Court",
    timeZone: "America/Chicago",
    currency: "USD",
    temperatureUnit: "F",
    areaUnit: "ft2",
    floorAreaM2: 1200,
    systemType: "vav-reheat-high-minimum",
    hasEconomizer: true,
    heatingFuel: "gas",
    electricityPriceKind: "marginal",
    electricityPricePerKwh: 0.09,
    demandPricePerKw: null,
    demandMonths: null,
    heatPricePerKwh: 0.04,
    complaintHours: null,
    labourPricePerHour: null,
    targetZoneAirTempC: 23,
    presentCoolingSetpointC: null,
    mainsVoltageV: 120,
    occupiedHours: {
      weekdays: { "1": workday, "2": workday, "3": workday, "4": workday, "5": workday },
      holidays: ["2022-05-30"],
    },
    ...changes,
  };
}
