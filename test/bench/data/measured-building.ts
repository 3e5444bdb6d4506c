import type { AssessmentInput } from "@/lib/overcooling/assessment-input";
import { heater, office, zone } from "../../lib/overcooling/offices";

/** An invented building of measured zones, every zone different, half of them with two heaters. */
export const measuredBuilding = (zones: number): AssessmentInput =>
  office({
    floorAreaM2: zones * 140,
    zones: Array.from({ length: zones }, (_, i) =>
      zone(
        i + 1,
        {
          cooling: { hours: 700 + (i % 50), depthK: 1.2 },
          deadband: { hours: 600, depthK: 0.2 + 0.01 * (i % 40) },
          reheat: { hours: 400, depthK: 2 },
        },
        { devices: i % 2 === 0 ? [heater(10_000 + 2 * i), heater(10_001 + 2 * i)] : [], coldReportsPerYear: i % 3 },
      ),
    ),
  });
