import type { ZoneState } from "@/lib/trends/zone-state";
import type { Point } from "./thin-points";

/** What a zone's chart over time is drawn from. All times are UTC seconds, all temperatures °C. */
export type ZoneSeries = {
  timeZone: string;
  from: number;
  to: number;
  zoneAir: readonly Point[];
  coolingSetpoint?: readonly Point[];
  heatingSetpoint?: readonly Point[];
  /** Comfort range; a constant one has two entries. */
  comfortBand?: readonly { t: number; low: number; high: number }[];
  /** Thermal sensation votes, -3 to +3. */
  reports?: readonly { t: number; vote: number }[];
  /** When heaters were found in use. */
  heaters?: readonly { t: number }[];
  states?: readonly { from: number; to: number; state: ZoneState }[];
  /** The same scale across charts that are compared; else it follows the data. */
  scaleC?: { min: number; max: number };
  /** A longer stretch without samples breaks the line. Two hours unless said. */
  gapSeconds?: number;
};
