import { AIR_HEAT_KJ_PER_M3K } from "@/lib/energy-model/air-heat";
import { FAN_CURVE, FAN_FLOOR_FRACTION } from "@/lib/energy-model/fan-power";
import { outdoorHours } from "@/lib/energy-model/outdoor-hours";
import type { AssessedZone } from "@/lib/overcooling/assessment-input";
import { quantiles } from "@/lib/statistics/quantile";
import { seededRandom, seedFromText } from "@/lib/statistics/random";
import { triangularQuantile } from "@/lib/statistics/triangular";
import { GREENSBORO_C, WORKED_HOURS } from "../../lib/overcooling/offices";
import { measuredBuilding } from "../data/measured-building";
import { contend } from "./contend";
import { medianRound } from "./cpu-time";

const SYSTEM = "vav-reheat-high-minimum";
const C_A = AIR_HEAT_KJ_PER_M3K;

/** The same figures from loops over typed arrays, written out for this building alone: no zone's figure, no working. */
await contend<{ zones: number; rounds: number }>(async ({ zones, rounds }) => {
  const input = measuredBuilding(zones);
  const n = input.draws;
  const ranges = new Map(input.assumptions.map((each) => [each.id, each]));
  const column = (id: string, stream = id): Float64Array => {
    const { low, value, high } = ranges.get(id) as { low: number; value: number; high: number };
    const random = seededRandom(seedFromText(stream) ^ input.seed);
    const shape = { low, mode: value, high };
    return Float64Array.from({ length: n }, () => (low < high ? triangularQuantile(shape, random()) : value));
  };
  const hours = outdoorHours(GREENSBORO_C, WORKED_HOURS);
  let p50 = Number.NaN;

  const draw = (): void => {
    const total = new Float64Array(n);
    const [tSat, tRa, fe] = [column("supply-air-temp"), column("return-air-temp"), column("economizer-error-factor")];
    const cop = column(`cooling-cop/${SYSTEM}`);
    const [eta, u, foc] = [
      column("heating-efficiency/gas"),
      column("building-heat-loss-per-area"),
      column("heater-in-overcooled-hours-fraction"),
    ];
    const [oa, rReq] = [column("outdoor-airflow-per-area"), column("required-airflow-fraction")];
    const [kf, wf] = [column("fan-saving-factor"), column("fan-power-per-airflow")];
    const [cp, sp] = [column("peak-coincidence"), column("peak-cooling-state-share")];
    const m = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      const air = { supplyAirTempC: tSat[i] as number, returnAirTempC: tRa[i] as number };
      const faultless = hours.meanMechanicalFraction(air);
      m[i] = Math.min(fe[i] as number, 1 / faultless) * faultless;
    }
    const [moved, notNeeded, removal] = [new Float64Array(n), new Float64Array(n), new Float64Array(n)];
    let design = 0;
    for (const each of input.zones) {
      design += zoneDraws(each, { total, moved, notNeeded, removal });
    }
    const [a, b, c, d] = FAN_CURVE;
    const power = (x: number): number => {
      const r = Math.min(1, Math.max(FAN_FLOOR_FRACTION, x));
      return a + b * r + c * r * r + d * r * r * r;
    };
    const [designAir, designHours] = [0.6 * input.zones.length, design];
    for (let i = 0; i < n; i++) {
      const r0 = (moved[i] as number) / designHours;
      const r1 = ((moved[i] as number) - (notNeeded[i] as number)) / designHours;
      const fan = (kf[i] as number) * (wf[i] as number) * designHours * (power(r0) - power(r1));
      const exhausted = Math.min(1, ((oa[i] as number) * 140 * input.zones.length) / (r0 * designAir));
      // `removal` holds, per draw, heaters' kWh while cooling; and those at minimum airflow behind the factor.
      const atMinimum = removalDeadband[i] as number;
      const removed = (((removal[i] as number) + atMinimum * (1 - exhausted)) * (m[i] as number)) / (cop[i] as number);
      total[i] = (total[i] as number) + (fan + removed) * 0.085;
      removalDeadband[i] = 0;
    }
    p50 = quantiles(total, [0.5])[0] as number;

    /** Adds one zone's cost; gives its air at design in the season hours. */
    function zoneDraws(
      each: AssessedZone,
      into: { total: Float64Array; moved: Float64Array; notNeeded: Float64Array; removal: Float64Array },
    ): number {
      const { cooling, deadband, reheat } = (each.annual as NonNullable<AssessedZone["annual"]>).byState;
      const seasonHours = cooling.hours + deadband.hours + reheat.hours;
      const offset = column("zone-sensor-offset", `zone-sensor-offset#${each.code}`);
      const factor = column("minimum-airflow-error-factor", `minimum-airflow-error-factor#${each.code}`);
      const plug = new Float64Array(n);
      let powerKw = 0;
      for (const device of each.devices) {
        const random = seededRandom(seedFromText(`device/${device.deviceId}`) ^ input.seed);
        const { low, value, high } = device.energyKwhPerYear;
        const shape = { low, mode: value, high };
        for (let i = 0; i < n; i++) plug[i] = (plug[i] as number) + triangularQuantile(shape, random());
        powerKw += device.highPowerW / 1000;
      }
      const complaints = each.coldReportsPerYear * 55;
      for (let i = 0; i < n; i++) {
        const [sat, ratio] = [tSat[i] as number, (m[i] as number) / (cop[i] as number)];
        const ua = ((u[i] as number) * 140) / 1000;
        const coldC = Math.max(0, cooling.overcoolingKh - (offset[i] as number) * cooling.hours);
        const coldD = Math.max(0, deadband.overcoolingKh - (offset[i] as number) * deadband.hours);
        const tD = 23 - coldD / deadband.hours;
        const tC = 23 - coldC / cooling.hours;
        const vMin = (factor[i] as number) * 0.18;
        const vReq = (rReq[i] as number) * 0.6;
        const warm = Math.max(tD, Math.min(23, sat + ((tD - sat) * Math.max(vMin, vReq)) / vReq));
        const excess = Math.max(0, vMin - vReq);
        const e3 = ua * coldC * ratio;
        const e4a = ua * deadband.hours * Math.max(0, warm - tD) * ratio;
        const e4b = C_A * excess * Math.max(0, (tRa[i] as number) - sat) * reheat.hours * ratio;
        const q4b = (C_A * excess * Math.max(0, 21 - sat) * reheat.hours) / (eta[i] as number);
        const e1 = (plug[i] as number) * (foc[i] as number);
        const vC = Math.min(0.3, Math.max(vReq, (0.3 * (tC - sat)) / (23 - sat)));
        const vD = Math.min(vMin, Math.max(vReq, (vMin * (tD - sat)) / (warm - sat)));
        const heaters = powerKw * (cp[i] as number);
        const kw =
          heaters +
          heaters / (cop[i] as number) +
          (ua * (coldC / cooling.hours) * (sp[i] as number)) / (cop[i] as number);
        into.moved[i] = (into.moved[i] as number) + cooling.hours * 0.3 + (deadband.hours + reheat.hours) * vMin;
        into.notNeeded[i] =
          (into.notNeeded[i] as number) +
          cooling.hours * (0.3 - vC) +
          deadband.hours * (vMin - vD) +
          reheat.hours * excess;
        into.removal[i] = (into.removal[i] as number) + (e1 * cooling.hours) / seasonHours;
        removalDeadband[i] = (removalDeadband[i] as number) + (e1 * deadband.hours) / seasonHours;
        into.total[i] =
          (into.total[i] as number) + (e1 + e3 + e4a + e4b) * 0.085 + q4b / 29.3071 + kw * 12 * 5 + complaints;
      }
      return 0.6 * seasonHours;
    }
  };
  const removalDeadband = new Float64Array(n);
  for (let i = 0; i < (zones < 1000 ? 12 : 2); i++) draw();
  return { ...medianRound(rounds, draw), p50, wholeMs: 0 };
});
