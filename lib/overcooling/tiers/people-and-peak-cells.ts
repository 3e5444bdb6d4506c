import type { AssessmentInput } from "../assessment-input";
import { exact, type Quantity, step } from "../calculation/quantity";
import { type Cell, NUMBERS, rowLabel } from "../component-model";
import { complaintCost } from "../components/complaints";
import { demandKw } from "../components/demand";
import type { Plant } from "../plant";
import type { Row } from "../rows";

/** The setpoint's part of the peak in a row: its heat loss coefficient and how far it lies below the target. */
export type PeakCooling = { heatLoss: Quantity; belowTarget: Quantity };

const NO_ENERGY = { electric: null, heat: null };

/** C6 of one row; null without a demand price, with a blended price, or with nothing that adds to the peak. */
export function demandCell(row: Row, cooling: PeakCooling | null, plant: Plant, input: AssessmentInput): Cell | null {
  const { electricity, currency } = input;
  if (electricity.kind === "blended" || electricity.demandPricePerKw === null) return null;
  if (row.heaters.length === 0 && !cooling) return null;
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
  const kw = step({
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
  const entered = { origin: "entered", source: "building settings", href: "/settings" } as const;
  const months =
    electricity.demandMonths === null
      ? plant.assumed.shared("demand-months", "n_m")
      : exact({
          symbol: "n_m",
          label: "billing months with a cooling peak",
          unit: "months",
          value: electricity.demandMonths,
          ...entered,
        });
  const price = exact({
    symbol: "p_d",
    label: "demand price a month",
    unit: `${currency}/kW`,
    value: electricity.demandPricePerKw,
    ...entered,
  });
  const money = step({
    symbol: `C_${NUMBERS.demand}`,
    label: `demand charge, ${rowLabel(row)}`,
    unit: `${currency} a year`,
    formula: "C_6 = D_z * p_d * n_m",
    terms: [kw, price, months],
    compute: (power, each, count) => power * each * count,
  });
  return { row, ...NO_ENERGY, money };
}

/** C7 of one row; null where the building has no hours and labour price of its own. */
export function complaintCell(row: Row, { complaint, currency }: AssessmentInput): Cell | null {
  if (!complaint || row.coldReportsPerYear === 0) return null;
  const entered = { origin: "entered", source: "building settings", href: "/settings" } as const;
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
      exact({ symbol: "h_c", label: "staff hours for one", unit: "h", value: complaint.hours, ...entered }),
      exact({
        symbol: "p_l",
        label: "labour price",
        unit: `${currency}/h`,
        value: complaint.labourPricePerHour,
        ...entered,
      }),
    ],
    compute: (reports, hoursEach, labourPricePerHour) => complaintCost({ reports, hoursEach, labourPricePerHour }),
  });
  return { row, ...NO_ENERGY, money };
}
