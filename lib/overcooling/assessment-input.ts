import type { ResolvedAssumption } from "@/lib/assumptions/assumption";
import type { HeatingFuel, SystemType } from "@/lib/assumptions/system-type";
import type { DeviceKind } from "@/lib/electrical/device-kind";
import type { ValueRange } from "@/lib/electrical/value-range";
import type { QualifiedFit } from "@/lib/energy-model/change-point/choose-model";
import type { DayType } from "@/lib/energy-model/meter/meter-model";
import type { DemandYear } from "@/lib/finance/billed-demand";
import type { PricedHours } from "@/lib/finance/tariff";
import type { LocalDate } from "@/lib/time/civil-date";
import type { AnnualExposure, ZoneExposure } from "@/lib/trends/zone-exposure";

export type ElectricityPrice = {
  kind: "marginal" | "blended";
  /** Major units of the currency. */
  pricePerKwh: number;
  /** Goes with a marginal price only: a blended one has it inside. */
  demandPricePerKw: number | null;
  demandMonths: number | null;
  /** Occupied season hours by the tariff's periods or blocks, in place of one price; null without such a tariff. */
  pricedHours: readonly PricedHours[] | null;
  /** A year of monthly peaks, with the ratchet that they are billed by; null where only a number of months is known. */
  demandYear: DemandYear | null;
};

export type AssessedDevice = {
  deviceId: number;
  label: string;
  kind: DeviceKind;
  energyKwhPerYear: ValueRange;
  highPowerW: number;
  /** Settings with hours whose power is not known: their energy is missing from the figure. */
  settingsWithoutPower: readonly string[];
};

export type AssessedZone = {
  zoneId: number;
  code: string;
  floorAreaM2: number | null;
  /** The zone's own target; the building's where null. */
  targetZoneAirTempC: number | null;
  designAirflowM3ps: number | null;
  minimumAirflowM3ps: number | null;
  minimumAirflowOrigin: "measured" | "entered" | "estimated" | null;
  annual: AnnualExposure | null;
  exposure: ZoneExposure | null;
  devices: readonly AssessedDevice[];
  /** Cold reports a year in cooling-season occupied hours. */
  coldReportsPerYear: number;
  /** A change to this zone is under way already: its cost stands, but nothing more is promised of it. */
  fixInProgress: boolean;
};

/** The cooling wing of a meter's model for one type of day, with the days of the year that it is applied to. */
export type MeteredDays = {
  type: DayType;
  fit: Pick<QualifiedFit, "model" | "errors">;
  readings: number;
  /** Mean outdoor air of the year's intervals [°C], and the days that each stands for. */
  outdoorC: readonly number[];
  daysEach: readonly number[];
};

/** A meter whose change-point model may be used: how its energy follows the outdoor air where it cools (reference C-ii). */
export type MeteredCooling = { status: "ok"; meter: string; href: string; year: string; days: readonly MeteredDays[] };

/** Meters of the building by name, none with a model that says what a setpoint is worth. */
export type UnusedMeters = { status: "unused"; meters: readonly string[] };

/**
 * What a verification showed that a change saved, beside what the model makes of the same change: electricity of an occupied
 * day [kWh]. `parts` are the components that the change acts on; heaters given up are told apart, as issued.
 */
export type ProvenSaving = {
  proposalId: number;
  title: string;
  /** Local date on which it was worked out. */
  foundOn: string;
  meter: string;
  days: number;
  measuredKwh: number;
  standardErrorKwh: number;
  modelledAirKwh: number;
  parts: readonly ("setpoint" | "deadband" | "reheat" | "fan")[];
  heatersKwh: { value: number; low: number; high: number };
  riseK: number;
  expectedRiseK: number;
  /** Days after that the building's meter was read over, both included; null for paired weeks. */
  window: { from: LocalDate; to: LocalDate } | null;
};

/** One building as it stands: what is known, what is assumed, and the seed and number of draws. */
export type AssessmentInput = {
  currency: string;
  floorAreaM2: number;
  targetZoneAirTempC: number;
  presentCoolingSetpointC: number | null;
  /** Measured: the median of the zones' trends. Entered: as the building's people say. */
  presentCoolingSetpointOrigin: "measured" | "entered";
  systemType: SystemType;
  hasEconomizer: boolean;
  heatingFuel: HeatingFuel;
  electricity: ElectricityPrice;
  /** Per kWh of bought gas or district heat; not used with electric reheat. */
  heatPricePerKwh: number | null;
  /** The building's own hours and labour price for one complaint. */
  complaint: { hours: number; labourPricePerHour: number } | null;
  /** Outdoor air of a year's hours and the occupied part (0-1) of each. */
  weather: { dryBulbC: ArrayLike<number>; occupied: ArrayLike<number> } | null;
  assumptions: readonly ResolvedAssumption[];
  zones: readonly AssessedZone[];
  /** Null without any meter. */
  meter: MeteredCooling | UnusedMeters | null;
  /** Changes in force that were shown to save, by the meter or by paired weeks. */
  proofs: readonly ProvenSaving[];
  /** Titles of proofs that the same days of the meter stand for: they verify nothing. */
  proofsOnSameDays: readonly string[];
  seed: number;
  draws: number;
};
