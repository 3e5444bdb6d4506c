import { savedKwMonths } from "@/lib/finance/billed-demand";
import { MONTH_NAMES } from "@/lib/finance/tariff";
import type { AssessmentInput } from "../assessment-input";
import { exact, type Quantity, type Step, step } from "../calculation/quantity";
import { type Cell, NUMBERS, rowLabel, sumOver } from "../component-model";
import { complaintCost } from "../components/complaints";
import { demandKw } from "../components/demand";
import type { Plant } from "../plant";
import type { Row } from "../rows";

/** The setpoint's part of the peak in a row: its heat loss coefficient and how far it lies below the target. */
export type PeakCooling = { heatLoss: Quantity; belowTarget: Quantity };

const ENTERED = { origin: "entered", source: "building settings", href: "/settings" } as const;
const NO_ENERGY = { electric: null, heat: null };

/** C6 of the rows; none without a demand price, with a blended price, or with nothing that adds to the peak. */
export function demandCells(
  rows: readonly Row[],
  coolingOf: (row: Row) => PeakCooling | null,
  plant: Plant,
  input: AssessmentInput,
): Cell[] {
  const { electricity, currency } = input;
  if (electricity.kind === "blended" || electricity.demandPricePerKw === null) return [];
  const adding = rows.flatMap((row) => {
    const cooling = coolingOf(row);
    return row.heaters.length === 0 && !cooling ? [] : [{ row, kw: addedKw(row, cooling, plant) }];
  });
  if (adding.length === 0) return [];
  const months = billedMonths(adding, plant, input);
  const price = exact({
    symbol: "p_d",
    label: "demand price a month",
    unit: `${currency}/kW`,
    value: electricity.demandPricePerKw,
    ...ENTERED,
  });
  return adding.map(({ row, kw }) => ({
    row,
    ...NO_ENERGY,
    money: step({
      symbol: `C_${NUMBERS.demand}`,
      label: `demand charge, ${rowLabel(row)}`,
      unit: `${currency} a year`,
      formula: "C_6 = D_z * p_d * n_m",
      terms: [kw, price, months],
      compute: (power, each, count) => power * each * count,
    }),
  }));
}

function addedKw(row: Row, cooling: PeakCooling | null, plant: Plant): Step {
  const none = (symbol: string, label: string, unit: string): Quantity =>
    exact({ symbol, label, unit, value: 0, origin: "computed", source: "not known at this tier" });
  const power = exact({
    symbol: "P_z",
    label: `power of the space heaters at their highest setting, ${rowLabel(row)}`,
    unit: "kW",
    value: row.heaters.reduce((sum, each) => sum + each.highPowerW, 0) / 1000,
    origin: "computed",
    source: "measurement sheets of the devices",
    href: "/devices",
  });
  return step({
    symbol: "D_z",
    label: `power that overcooling adds to the billed peak, ${rowLabel(row)}`,
    unit: "kW",
    formula: "D_z = P_z * c_p + P_z * c_p / COP + UA_z * dT * s_p / COP",
    terms: [
      power,
      plant.assumed.shared("peak-coincidence", "c_p"),
      cooling?.heatLoss ?? none("UA_z", "heat loss coefficient", "kW/K"),
      cooling?.belowTarget ?? none("dT", "depth below the target", "K"),
      plant.assumed.shared("peak-cooling-state-share", "s_p"),
      plant.cop,
    ],
    compute: (heaterKw, coincidence, heatLossKwPerK, belowTargetK, peakCoolingShare, cop) =>
      demandKw({ heaterKw, coincidence, heatLossKwPerK, belowTargetK, peakCoolingShare, cop }),
    notes: ["A higher setpoint lowers the peak only while the plant is not at its limit in that hour."],
  });
}

/** Months in which a kW counts: as stated, by assumption, or by a year's peaks and the ratchet (reference T3). */
function billedMonths(
  adding: readonly { row: Row; kw: Step }[],
  plant: Plant,
  { electricity }: AssessmentInput,
): Quantity {
  const shared = { symbol: "n_m", label: "billing months in which a kW counts", unit: "months" };
  const year = electricity.demandYear;
  if (year) {
    return step({
      ...shared,
      formula: "n_m = (billed kW of the twelve months - billed kW with D less in the cooling months) / D",
      terms: [sumOver(adding, (each) => each.kw, "D", "power that overcooling adds to the billed peak") as Quantity],
      compute: (kw) => (kw > 0 ? savedKwMonths(year, kw) / kw : 0),
      notes: [
        `Peaks of ${year.peaksKw.join(", ")} kW from January to December; cooling peaks in ${year.coolingMonths.map((each) => MONTH_NAMES[each]).join(", ")}.`,
        year.ratchetFraction > 0
          ? `The ratchet bills every month at ${Math.round(100 * year.ratchetFraction)} % of the highest peak or more, so a lower summer peak counts in other months too, and counts for nothing while another month's peak holds the highest up.`
          : "Without a ratchet each month is billed by its own peak.",
      ],
    });
  }
  if (electricity.demandMonths === null) return plant.assumed.shared("demand-months", "n_m");
  return exact({ ...shared, value: electricity.demandMonths, ...ENTERED });
}

/** C7 of one row; null where the building has no hours and labour price of its own. */
export function complaintCell(row: Row, { complaint, currency }: AssessmentInput): Cell | null {
  if (!complaint || row.coldReportsPerYear === 0) return null;
  const money = step({
    symbol: `C_${NUMBERS.complaints}`,
    label: `work on complaints, ${rowLabel(row)}`,
    unit: `${currency} a year`,
    formula: "C_7 = n_z * h_c * p_l",
    terms: [
      exact({
        symbol: "n_z",
        label: "cold reports a year in cooling-season occupied hours",
        unit: "reports",
        value: row.coldReportsPerYear,
        origin: "measured",
        source: "comfort reports",
        href: "/comfort-reports",
      }),
      exact({ symbol: "h_c", label: "staff hours for one", unit: "h", value: complaint.hours, ...ENTERED }),
      exact({
        symbol: "p_l",
        label: "labour price",
        unit: `${currency}/h`,
        value: complaint.labourPricePerHour,
        ...ENTERED,
      }),
    ],
    compute: (reports, hoursEach, labourPricePerHour) => complaintCost({ reports, hoursEach, labourPricePerHour }),
  });
  return { row, ...NO_ENERGY, money };
}
