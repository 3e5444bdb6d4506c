import type { CauseCode, ReportEvidence, ZoneEvidence } from "@/lib/trends/diagnosis/zone-evidence";
import { jumping, jumpsOf, meter, STILL, withHeater } from "./made-heater";
import { single } from "./made-unit";
import { LIMITS, report, scenarioEvidence, scenarioGrids } from "./zone-scenario";

type At = Parameters<typeof scenarioGrids>[0];
const zone = (at: At, more: Partial<ZoneEvidence> = {}): ZoneEvidence => scenarioEvidence(scenarioGrids(at), more);

/** A made zone that shows a cause of the table, and one that nearly does: the one thing that makes the difference is named. */
export type TableCase = {
  row: number;
  code: CauseCode;
  shows: () => ZoneEvidence;
  nearly: Readonly<Record<string, () => ZoneEvidence>>;
};

const reports = (desks: string, vote: number, zoneAirC: number): ReportEvidence[] =>
  [...desks].map((desk) => report(desk, vote, zoneAirC));

const OFFSET = {
  zoneId: 7,
  group: "floor" as const,
  neighbours: 11,
  floatOffsetK: 1.6,
  floatHours: 400,
  occupiedOffsetK: 0.1,
};

/** Occupied, held at a low setpoint. */
const LOW = { zoneAirTempC: 21.5, coolingSetpointC: 21.4 };
const AT_MINIMUM = { zoneAirTempC: 21.5, airflowM3ps: 0.1, damperPct: 30 };
const REHEATING = { zoneAirTempC: 20.1, airflowM3ps: 0.1, damperPct: 30, reheatValvePct: 40, dischargeAirTempC: 18 };

/** Mild in the first half of the record and hot in the second; supply air by what it does in mild weather. */
const supplied = (mildSupplyC: number, more: Partial<ZoneEvidence> = {}, humidityPct?: number): ZoneEvidence =>
  zone(
    ({ week }) => ({
      ...AT_MINIMUM,
      outdoorAirTempC: week < 3 ? 17 : 28,
      supplyAirTempC: week < 3 ? mildSupplyC : 12.6,
      relativeHumidityPct: humidityPct,
    }),
    {
      airHandler: { name: "AHU-1", zones: 8, zonesAtMinimum: ["1", "2", "3", "4", "5"], zonesShortOfAir: ["6"] },
      ...more,
    },
  );

const early =
  (recoveredC: number): At =>
  ({ hour }) =>
    hour < 10 ? { ...AT_MINIMUM, zoneAirTempC: 20.5 } : { zoneAirTempC: recoveredC };
/** The hours before 08:00 are as cold as the first occupied ones. */
function coldMorning(recoveredC: number): ZoneEvidence {
  const grids = scenarioGrids(early(recoveredC));
  for (let i = 0; i < grids.zoneAirTempC.length; i++) {
    const hour = (i % 96) / 4;
    if (hour >= 5 && hour < 8) grids.zoneAirTempC[i] = 20.3;
  }
  return scenarioEvidence(grids);
}

const inTurn =
  (heatingSetpointC: number): At =>
  ({ i }) =>
    i % 4 < 2
      ? { heatingSetpointC, zoneAirTempC: 22.6 }
      : { heatingSetpointC, zoneAirTempC: 22.6, airflowM3ps: 0.1, reheatValvePct: 30, dischargeAirTempC: 20 };

const single9 = (heavyM3ps: number, lightM3ps = 0.13): ZoneEvidence =>
  zone(
    ({ i }) => ({
      ...REHEATING,
      airflowM3ps: i % 4 === 0 ? heavyM3ps : lightM3ps,
      reheatValvePct: i % 4 === 0 ? 80 : 30,
    }),
    { limits: { ...LIMITS, minimumAirflowM3ps: lightM3ps } },
  );

const held = (at: Partial<ReturnType<At>>, more: Partial<ZoneEvidence> = {}): ZoneEvidence =>
  zone(() => ({ ...LOW, ...at }), more);

/** Every cause of the table by made series. */
export const TABLE_CASES: readonly TableCase[] = [
  {
    row: 1,
    code: "sensor-bias",
    shows: () => zone(() => ({}), { offset: OFFSET }),
    nearly: {
      "stands as far off by day": () => zone(() => ({}), { offset: { ...OFFSET, occupiedOffsetK: 1.6 } }),
      "stands 1 K off": () => zone(() => ({}), { offset: { ...OFFSET, floatOffsetK: 1 } }),
    },
  },
  {
    row: 1,
    code: "heater-warms-thermostat",
    shows: () => withHeater(jumping(1.8, 0.1), jumpsOf(jumping(1.8, 0.1))),
    nearly: {
      "no heater on the register": () =>
        withHeater(jumping(1.8, 0.1), jumpsOf(jumping(1.8, 0.1)), { heaterCount: 0, heaterHoursPerYear: 0 }),
      "a register with too few hours": () =>
        withHeater(jumping(1.8, 0.1), jumpsOf(jumping(1.8, 0.1)), { heaterHoursPerYear: 20 }),
      "no more air": () => withHeater(jumping(1.8, 0), jumpsOf(jumping(1.8, 0))),
      "a jump as the zone's own air makes": () => withHeater(jumping(0.7, 0.1), jumpsOf(jumping(0.7, 0.1))),
      "the other zones jump as well": () =>
        withHeater(jumping(1.8, 0.1), jumpsOf(jumping(1.8, 0.1), { neighbours: jumping(1.5, 0.1) })),
      "its own meter shows the heater on at another time": () =>
        withHeater(jumping(1.8, 0.1), jumpsOf(jumping(1.8, 0.1), { heaterPowerW: meter(STILL, 14) })),
    },
  },
  {
    row: 1,
    code: "cold-reports-at-target",
    shows: () => zone(() => ({}), { reports: reports("ABCDEFG", -2, 23.3) }),
    nearly: {
      "they came below the target": () => zone(() => ({}), { reports: reports("ABCDEFG", -2, 22.4) }),
      "as many hot ones came": () =>
        zone(() => ({}), { reports: [...reports("ABCDEFG", -2, 23.3), ...reports("ABCDEFG", 2, 23.3)] }),
    },
  },
  {
    row: 2,
    code: "setpoint-stepped-down",
    shows: () => zone(({ week }) => (week < 3 ? {} : LOW)),
    nearly: {
      "it was put back": () => zone(({ week }) => (week === 2 || week === 3 ? LOW : {})),
      "it fell by half a kelvin": () => zone(({ week }) => (week < 3 ? {} : { coolingSetpointC: 22.7 })),
    },
  },
  {
    row: 2,
    code: "setback-not-followed",
    shows: () => zone(() => ({ coolingSetpointC: 27 })),
    nearly: {
      "no zone has a setback": () =>
        zone(() => ({ coolingSetpointC: 27 }), {
          neighbours: { zones: 8, medianCoolingSetbackK: 0, stepDownsUtcSeconds: [] },
        }),
      "it has one": () => zone(() => ({})),
    },
  },
  {
    row: 3,
    code: "cold-start",
    shows: () => coldMorning(23.3),
    nearly: { "it does not recover": () => coldMorning(21) },
  },
  {
    row: 4,
    code: "airflow-above-command",
    shows: () => zone(() => ({ zoneAirTempC: 21.5, airflowM3ps: 0.2, damperPct: 30 })),
    nearly: {
      "it reheats": () =>
        zone(() => ({
          zoneAirTempC: 21.5,
          airflowM3ps: 0.2,
          damperPct: 30,
          reheatValvePct: 40,
          dischargeAirTempC: 20,
        })),
      "the damper is open": () => zone(() => ({ zoneAirTempC: 21.5, airflowM3ps: 0.2, damperPct: 60 })),
      "single intervals": () =>
        zone(({ i }) => (i % 3 === 0 ? { zoneAirTempC: 23, airflowM3ps: 0.2, damperPct: 30 } : {})),
      "1.4 of the minimum": () => zone(() => ({ zoneAirTempC: 21.5, airflowM3ps: 0.14, damperPct: 30 })),
    },
  },
  {
    row: 5,
    code: "reheat-valve-leaking",
    shows: () => zone(() => ({ ...AT_MINIMUM, dischargeAirTempC: 18 })),
    nearly: {
      "3 K of duct": () => zone(() => ({ ...AT_MINIMUM, dischargeAirTempC: 16 })),
      "the valve is open": () => zone(() => ({ ...AT_MINIMUM, dischargeAirTempC: 18, reheatValvePct: 20 })),
      "the air stands still": () => zone(() => ({ ...AT_MINIMUM, airflowM3ps: 0.02, dischargeAirTempC: 18 })),
    },
  },
  {
    row: 6,
    code: "reheat-without-heat",
    shows: () => zone(() => ({ ...REHEATING, zoneAirTempC: 19.4, reheatValvePct: 100, dischargeAirTempC: 13.5 })),
    nearly: {
      "heat arrives": () =>
        zone(() => ({ ...REHEATING, zoneAirTempC: 19.4, reheatValvePct: 100, dischargeAirTempC: 20 })),
      "the zone is held": () => zone(() => ({ ...REHEATING, reheatValvePct: 100, dischargeAirTempC: 13.5 })),
    },
  },
  {
    row: 7,
    code: "reheat-at-minimum",
    shows: () => zone(() => REHEATING),
    nearly: {
      "the airflow is raised": () => zone(() => ({ ...REHEATING, airflowM3ps: 0.2 })),
      "it is winter": () => zone(() => ({ ...REHEATING, outdoorAirTempC: 5 })),
      "nobody recorded the outdoor air": () =>
        scenarioEvidence({ ...scenarioGrids(() => REHEATING), outdoorAirTempC: null }),
    },
  },
  {
    row: 8,
    code: "minimum-airflow-overcooling",
    shows: () => zone(() => AT_MINIMUM),
    nearly: {
      "the airflow is above its minimum": () => zone(() => ({ ...AT_MINIMUM, airflowM3ps: 0.13 })),
      "the zone is at its setpoint": () => zone(() => ({ ...AT_MINIMUM, coolingSetpointC: 21.8 })),
      "the zone is not cold": () => zone(() => ({ ...AT_MINIMUM, zoneAirTempC: 22.9, coolingSetpointC: 24 })),
      "the damper is wide open": () => zone(() => ({ ...AT_MINIMUM, damperPct: 90 })),
    },
  },
  {
    row: 9,
    code: "single-maximum",
    shows: () => single9(0.13),
    nearly: {
      "the airflow rises with the call": () => single9(0.2),
      "a minimum of 20 % of design": () => single9(0.08, 0.08),
      "no heavy call was seen": () => zone(() => ({ ...REHEATING, airflowM3ps: 0.13, reheatValvePct: 30 })),
    },
  },
  {
    row: 10,
    code: "supply-air-not-reset",
    shows: () => supplied(12.6),
    nearly: {
      "it is warmer in mild weather": () => supplied(15),
      "few zones of the air handler are at minimum": () =>
        supplied(12.6, {
          airHandler: { name: "AHU-1", zones: 8, zonesAtMinimum: ["1", "2", "3", "4"], zonesShortOfAir: [] },
        }),
      "the supply air is another air handler's": () => supplied(12.6, { airHandler: null }),
    },
  },
  {
    row: 11,
    code: "supply-air-held-for-humidity",
    shows: () => supplied(12.6, {}, 75),
    nearly: {
      "the air is dry": () => supplied(12.6, {}, 45),
      "nobody measured it": () => supplied(12.6),
      "the supply air is reset all the same": () => supplied(15, {}, 75),
    },
  },
  {
    row: 12,
    code: "narrow-deadband",
    shows: () => zone(inTurn(21.5)),
    nearly: {
      "3 K apart": () => zone(inTurn(20.2)),
      "it stays in cooling": () => zone(() => ({ heatingSetpointC: 21.5 })),
    },
  },
  {
    row: 13,
    code: "setpoint-too-low",
    shows: () => held({}),
    nearly: {
      "the airflow is at its minimum": () => held({ airflowM3ps: 0.1, damperPct: 30 }),
      "the valve is open": () => held({ reheatValvePct: 20, dischargeAirTempC: 18 }),
      "the setpoint is at the target": () => held({ coolingSetpointC: 23, zoneAirTempC: 22.9 }),
      "the zone is 0.7 K above it": () => held({ zoneAirTempC: 22.1, coolingSetpointC: 21.4 }),
    },
  },
  {
    row: 14,
    code: "one-cold-desk",
    shows: () => zone(() => ({}), { reports: reports("AAAAB", -2, 23.2) }),
    nearly: {
      "three of four": () => zone(() => ({}), { reports: reports("AAAB", -2, 23.2) }),
      "from all desks": () => zone(() => ({}), { reports: reports("ABCDEF", -2, 23.2) }),
      "the zone itself is cold": () => held({}, { reports: reports("AAAAB", -2, 21.5) }),
    },
  },
  {
    row: 15,
    code: "short-of-air",
    shows: () => zone(() => ({ zoneAirTempC: 24, airflowM3ps: 0.4, damperPct: 100 })),
    nearly: {
      "it has air to spare": () => zone(() => ({ zoneAirTempC: 24, airflowM3ps: 0.3 })),
      "all its air holds it": () => zone(() => ({ zoneAirTempC: 23.2, airflowM3ps: 0.4, damperPct: 100 })),
    },
  },
  {
    row: 15,
    code: "hot-reports",
    shows: () => zone(() => ({}), { reports: reports("AABBCCDD", 2, 23.5) }),
    nearly: {
      "one person's": () => zone(() => ({}), { reports: reports("AAAAAAAA", 2, 23.5) }),
      "as many cold ones": () =>
        zone(() => ({}), { reports: [...reports("AABBCCDD", 2, 23.5), ...reports("BBCCDDAA", -2, 23.5)] }),
    },
  },
  {
    row: 16,
    code: "short-compressor-runs",
    shows: () => single(6, () => ({ ...LOW, zoneAirTempC: 21.9 })),
    nearly: {
      "runs of a quarter of an hour": () => single(15, () => ({ ...LOW, zoneAirTempC: 21.9 })),
      "the zone is not cold": () => single(6, () => ({ zoneAirTempC: 23.4 })),
    },
  },
  {
    row: 16,
    code: "cold-without-cooling",
    shows: () => single(15, ({ hour }) => (hour >= 10 ? { coolingStage: 0, zoneAirTempC: 21 } : {})),
    nearly: {
      "the pauses of a cycle": () => single(15, ({ i }) => ({ coolingStage: i % 4 === 0 ? 1 : 0, zoneAirTempC: 21 })),
      "the unit is idle and the zone warm": () => single(15, ({ hour }) => (hour >= 10 ? { coolingStage: 0 } : {})),
    },
  },
  {
    row: 17,
    code: "rooms-of-different-needs",
    shows: () => zone(() => ({}), { reports: [...reports("AAABBB", -2, 23.2), ...reports("CCCDDD", 2, 23.5)] }),
    nearly: {
      "each desk is now cold, now hot": () =>
        zone(() => ({}), { reports: [...reports("AABBCD", -2, 23.2), ...reports("ABCCDD", 2, 23.5)] }),
      "they are hot when the zone reads hot": () =>
        zone(() => ({}), { reports: [...reports("AAABBB", -2, 21.5), ...reports("CCCDDD", 2, 25)] }),
      "too few to tell": () => zone(() => ({}), { reports: [...reports("AA", -2, 23.2), ...reports("CC", 2, 23.5)] }),
    },
  },
];
