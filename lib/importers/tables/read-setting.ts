import type { PowerBasis } from "@/lib/electrical/device-kind";
import { normalHeading } from "./columns";
import type { RowCells } from "./row-cells";

/** One setting of a device as a row of a file; null where the cell is blank. */
export type SettingRow = {
  name: string;
  basis: PowerBasis;
  currentA: number | null;
  currentResolutionA: number | null;
  /** As read at the outlet; null when the nominal voltage is to be taken. */
  voltageV: number | null;
  powerFactor: number | null;
  powerW: number | null;
  hoursPerYear: number | null;
  dutyFraction: number | null;
};

const BASES: Readonly<Record<string, PowerBasis>> = {
  "plug meter": "plug-meter",
  "plug in meter": "plug-meter",
  meter: "plug-meter",
  clamp: "clamp",
  "clamp meter": "clamp",
  nameplate: "nameplate",
  "class default": "class-default",
  default: "class-default",
};

const STANDARD_NAMES = new Set(["off", "fan only", "low heat", "medium heat", "high heat", "low speed", "high speed"]);

/** Reading that each basis needs, as its column. */
const NEEDS: Readonly<Record<PowerBasis, "currentA" | "powerW" | null>> = {
  clamp: "currentA",
  "plug-meter": "powerW",
  nameplate: "powerW",
  "class-default": null,
};
const COLUMN_NAMES = { currentA: "current_A", powerW: "power_W" } as const;

/** The setting that a row describes, or null after a fault. Limits are those that the register holds. */
export function readSetting(cells: RowCells): SettingRow | null {
  const written = cells.text("setting", 60);
  if (written === "") cells.fault("setting-blank", "the setting has no name; write for example high-heat, or off");
  const basisText = cells.text("basis", 40);
  const basis = BASES[normalHeading(basisText)];
  if (!basis) {
    const found = basisText === "" ? "is blank" : `"${basisText}" is not known`;
    cells.fault("basis-unknown", `the basis ${found}; write plug-meter, clamp, nameplate or class-default`);
  }
  const readings = {
    currentA: cells.number("currentA", { low: 0, high: 100, unit: "A" }),
    currentResolutionA: cells.number("currentResolutionA", { low: 0, high: 10, aboveLow: true, unit: "A" }),
    voltageV: cells.number("voltageV", { low: 50, high: 480, unit: "V" }),
    powerFactor: cells.number("powerFactor", { low: 0, high: 1, aboveLow: true, unit: "" }),
    powerW: cells.number("powerW", { low: 0, high: 10_000, unit: "W" }),
    hoursPerYear: cells.number("hoursPerYear", { low: 0, high: 8784, unit: "h a year" }),
    dutyFraction: cells.number("dutyFraction", { low: 0, high: 1, unit: "(write 60 % as 0.6)", percentAllowed: true }),
  };
  if (cells.hasFaults() || !basis) return null;
  checkBasis(cells, basis, readings);
  return { name: settingName(written), basis, ...readings };
}

function checkBasis(cells: RowCells, basis: PowerBasis, readings: Pick<SettingRow, "currentA" | "powerW">): void {
  const needed = NEEDS[basis];
  if (needed && readings[needed] === null) {
    cells.fault("reading-blank", `the basis ${basis} needs a value in ${COLUMN_NAMES[needed]}`);
  }
  if (basis === "class-default" && (readings.currentA !== null || readings.powerW !== null)) {
    cells.fault(
      "reading-not-used",
      "the basis class-default takes no reading, but the row has one; say how it was read or take it out",
    );
  }
}

/** Standard names in the register's spelling; a name of one's own as written. */
function settingName(written: string): string {
  const normal = normalHeading(written);
  return STANDARD_NAMES.has(normal) ? normal.replace(/ /g, "-") : written;
}
