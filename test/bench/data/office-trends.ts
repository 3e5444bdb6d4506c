/** Points of a zone, in the order of their columns. */
export const POINTS = ["ZN-T (°F)", "CLG-SP (°F)", "Flow (cfm)"] as const;

/** Length of an interval [s]. */
export const STEP_SECONDS = 900;

/** Stands for a reading that is not there. */
export const MISSING = -1;

/** Local midnight of 1 January 2025 in Chicago, where all files of the bench come from. */
export const START_UTC_SECONDS = 1_735_711_200;
export const TIME_ZONE = "America/Chicago";

/** Zone codes as the building has them: ten zones a floor. */
export const zoneCode = (zone: number): string => `${Math.floor(zone / 10) + 1}-${(zone % 10) + 1}`;

export const pointNames = (zones: number): string[] =>
  Array.from({ length: zones }, (_, zone) => POINTS.map((point) => `VAV-${zoneCode(zone)} ${point}`)).flat();

/**
 * An invented office, quarter hour by quarter hour, in a few bytes a point: zone air to 0.1 °F with drift, a cooling
 * setpoint that holds for hours, an airflow in whole cfm; cells that are missing, outages of one point and, rarely,
 * of the whole building. Equal seeds give equal readings, whatever part of them is looked at.
 */
export class OfficeTrends {
  /** Readings of the present interval, zone by zone in the order of `POINTS`; temperatures in tenths of a degree. */
  readonly values: Int32Array;
  /** The control system was off: no row is written. */
  silent = false;
  private readonly random: Uint32Array;
  private readonly airF: Float64Array;
  private readonly setpointF: Float64Array;
  private readonly flow: Float64Array;
  private readonly outage: Int32Array;
  private buildingOutage = 0;

  constructor(
    readonly zones: number,
    seed: number,
  ) {
    const points = zones * POINTS.length;
    this.values = new Int32Array(points);
    this.random = Uint32Array.from({ length: points + 1 }, (_, i) => (seed * 7919 + i * 104_729) >>> 0);
    this.airF = new Float64Array(zones).fill(73);
    this.setpointF = new Float64Array(zones).fill(82);
    this.flow = new Float64Array(zones);
    this.outage = new Int32Array(points);
  }

  /** Goes on to the next interval. `localHour` is 0 to 23.75. */
  next(localHour: number): void {
    if (this.buildingOutage > 0) this.buildingOutage--;
    else if (this.draw(this.values.length) < 0.0002) this.buildingOutage = 1 + Math.floor(this.draw(this.values.length) * 30);
    this.silent = this.buildingOutage > 0;
    const occupied = localHour >= 7 && localHour < 18;
    for (let zone = 0; zone < this.zones; zone++) this.nextOfZone(zone, localHour, occupied);
  }

  private nextOfZone(zone: number, localHour: number, occupied: boolean): void {
    const at = zone * POINTS.length;
    const air = (this.airF[zone] as number) + ((occupied ? 71.5 : 77) - (this.airF[zone] as number)) * 0.03;
    this.airF[zone] = air + (this.draw(at) - 0.5) * 0.3;
    if (localHour === 7) this.setpointF[zone] = 72 + Math.floor(this.draw(at + 1) * 5);
    if (localHour === 18) this.setpointF[zone] = 82;
    const wanted = occupied ? 240 + 120 * Math.sin((Math.PI * (localHour - 7)) / 11) : 0;
    this.flow[zone] = occupied ? 0.6 * (this.flow[zone] as number) + 0.4 * wanted + (this.draw(at + 2) - 0.5) * 12 : 0;
    this.keep(at, Math.round((this.airF[zone] as number) * 10));
    this.keep(at + 1, (this.setpointF[zone] as number) * 10);
    this.keep(at + 2, Math.max(0, Math.round(this.flow[zone] as number)));
  }

  private keep(point: number, value: number): void {
    const left = this.outage[point] as number;
    if (left > 0) {
      this.outage[point] = left - 1;
    } else if (this.draw(point) < 0.0015) {
      this.outage[point] = this.draw(point) < 0.7 ? 0 : Math.floor(this.draw(point) ** 3 * 700);
    } else {
      this.values[point] = value;
      return;
    }
    this.values[point] = MISSING;
  }

  /** Uniform in [0, 1), mulberry32, a stream of its own for each point. */
  private draw(stream: number): number {
    const state = ((this.random[stream] as number) + 0x6d2b79f5) >>> 0;
    this.random[stream] = state;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  }
}
