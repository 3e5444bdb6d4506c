import { M3PS_PER_CFM, m3psFromLps, m3psFromM3ph } from "@/lib/units/airflow";
import { M2_PER_FT2 } from "@/lib/units/area";
import type { ColumnSpec } from "./columns";
import type { TableKind } from "./table-read";

const AREA_UNITS = { m2: 1, sqm: 1, "sq m": 1, ft2: M2_PER_FT2, sqft: M2_PER_FT2, "sq ft": M2_PER_FT2, sf: M2_PER_FT2 };
const AIRFLOW_UNITS = {
  "m3/s": 1,
  m3ps: 1,
  "l/s": m3psFromLps(1),
  lps: m3psFromLps(1),
  cfm: M3PS_PER_CFM,
  "m3/h": m3psFromM3ph(1),
  m3ph: m3psFromM3ph(1),
};

const ZONE_NAMES = ["zone", "zone code", "zone id"];
const DESK_NAMES = ["desk", "desk code", "desk id"];
const NOTE: ColumnSpec = { key: "note", names: ["note", "notes", "comment", "remark"] };

/** Columns of each table that can be brought in as CSV, by the field of the row that they fill. */
export const TABLE_COLUMNS: Record<TableKind, readonly ColumnSpec[]> = {
  zones: [
    { key: "code", names: [...ZONE_NAMES, "code"], required: true },
    { key: "name", names: ["name", "zone name", "description"] },
    { key: "floor", names: ["floor", "storey", "level"] },
    { key: "floorAreaM2", names: ["floor area", "area", "zone area"], units: AREA_UNITS },
    { key: "airHandler", names: ["air handler", "ahu", "air handling unit"] },
    { key: "designAirflowM3ps", names: ["design airflow", "maximum airflow", "max airflow"], units: AIRFLOW_UNITS },
    { key: "minimumAirflowM3ps", names: ["minimum airflow", "min airflow"], units: AIRFLOW_UNITS },
  ],
  desks: [
    { key: "code", names: [...DESK_NAMES, "code"], required: true },
    { key: "zoneCode", names: ZONE_NAMES, required: true },
    NOTE,
  ],
  devices: [
    { key: "label", names: ["device", "device label", "label"], required: true },
    { key: "kind", names: ["kind", "device kind"] },
    { key: "deviceClass", names: ["class", "device class"], required: true },
    { key: "zoneCode", names: ZONE_NAMES, required: true },
    { key: "deskCode", names: DESK_NAMES },
    { key: "setting", names: ["setting", "setting name"], required: true },
    { key: "basis", names: ["basis", "power basis"], required: true },
    { key: "currentA", names: ["current", "measured current"], units: { a: 1, ma: 0.001 } },
    { key: "currentResolutionA", names: ["resolution", "current resolution"], units: { a: 1, ma: 0.001 } },
    { key: "voltageV", names: ["voltage"], units: { v: 1 } },
    { key: "powerFactor", names: ["power factor", "pf"] },
    { key: "powerW", names: ["power", "measured power"], units: { w: 1, kw: 1000 } },
    { key: "hoursPerYear", names: ["hours per year", "hours/year", "hours a year", "annual hours"] },
    { key: "dutyFraction", names: ["duty", "duty fraction", "duty cycle"], units: { "": 1, "%": 0.01 } },
  ],
  bills: [
    { key: "from", names: ["from", "from date", "start", "start date", "period start"] },
    { key: "to", names: ["to", "to date", "end", "end date", "period end"] },
    { key: "month", names: ["month", "bill month"] },
    { key: "energyKwh", names: ["energy", "usage", "consumption"], units: { kwh: 1, mwh: 1000 }, required: true },
    { key: "energyKwh", names: ["kwh", "kwh total", "total kwh", "kwh used"] },
    { key: "billedDemandKw", names: ["billed demand", "demand"], units: { kw: 1 } },
    {
      key: "charges",
      names: ["charges", "total charges", "total current charges", "cost", "amount"],
      units: { "": 1, $: 1, "£": 1, "€": 1 },
    },
  ],
};
