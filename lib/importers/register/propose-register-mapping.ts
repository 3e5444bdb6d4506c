import { normalHeading } from "../tables/columns";
import type { RegisterSheet } from "./register-grid";
import type { RegisterField, RegisterMapping } from "./register-mapping";

/** Headings by the field that they mean, the surest first; a heading is taken by one field only. */
const WORDS: readonly [RegisterField, RegExp][] = [
  ["zoneCode", /^(hvac )?zone( code| id| no)?$/],
  ["deskCode", /^(desk|workstation|seat|workplace)( code| id| no| number)?$/],
  ["measuredW", /^(measured|metered)( power| watts)?( w| kw)?$|^power measured/],
  ["nameplateA", /(nameplate|rated)? ?(current|amps|amperes)( a)?$/],
  [
    "nameplateW",
    /^(nameplate|rated|plug|nominal)( power| watts| wattage| load)?( w| kw)?$|^(power|watts|wattage)( w| kw)?$|^k?w$/,
  ],
  ["hoursPerYear", /^(annual )?hours( per year| a year|\/year)?$/],
  ["foundOn", /^(found|found on|date|date found|survey date|surveyed|first seen)$/],
  ["make", /^(make|brand|manufacturer|maker)$/],
  ["model", /^model( name| number| no)?$/],
  ["kind", /^(kind|category|heater or fan)$/],
  ["deviceClass", /^(class|type|device type|appliance|sort)$/],
  ["description", /^(name|description|device name|.* name)$/],
  ["label", /^(label|tag|asset|asset tag|asset no|id|no|number|sticker|device|.* id)$/],
  ["note", /^(note|notes|comment|comments|remark|remarks)$/],
];

/** The heading row of a sheet: the first of its first ten rows that means the most fields. Counted from 0. */
export function headingRow(sheet: RegisterSheet): number {
  let [best, most] = [0, 0];
  for (const [at, { cells }] of sheet.rows.slice(0, 10).entries()) {
    const count = Object.keys(columnsOf(cells)).length;
    if (count > most) [best, most] = [at, count];
  }
  return best;
}

function columnsOf(cells: readonly string[]): RegisterMapping["columns"] {
  const columns: RegisterMapping["columns"] = {};
  const taken = new Set<number>();
  for (const [field, pattern] of WORDS) {
    const at = cells.findIndex((cell, index) => !taken.has(index) && cell !== "" && pattern.test(normalHeading(cell)));
    if (at < 0) continue;
    columns[field] = at;
    taken.add(at);
  }
  return columns;
}

/** What each text of the class column is likely to be, by its words; nothing where the words do not tell. */
const CLASS_WORDS: readonly [RegExp, (mainsVoltageV: number) => string][] = [
  [/blanket|throw/, () => "heated-throw"],
  [/cushion|seat/, () => "heated-cushion"],
  [/\bmat\b|\bpad\b/, () => "heated-mat"],
  [/foot ?warmer/, () => "foot-warmer-lamp"],
  [/oil|radiator/, (voltage) => (voltage > 180 ? "oil-radiator-2kw" : "oil-radiator-1500")],
  [/panel/, () => "radiant-panel"],
  [/radiant|halogen|quartz|infrared/, () => "radiant-1500"],
  [/convector/, (voltage) => (voltage > 180 ? "fan-heater-3kw" : "fan-heater-1500")],
  [/fan heater|ceramic|space heater/, (voltage) => (voltage > 180 ? "fan-heater-2kw" : "fan-heater-1500")],
  [/usb|hand|neck/, () => "usb-fan"],
  [/tower fan/, () => "tower-fan"],
  [/box fan/, () => "box-fan"],
  [/(standing|stand|pedestal|floor) fan/, () => "pedestal-fan"],
  [/(desk|table|clip|personal) fan/, () => "desk-fan-small"],
];

export function proposeClass(text: string, mainsVoltageV: number): string {
  const words = normalHeading(text);
  const found = /evaporat|humidif/.test(words) ? undefined : CLASS_WORDS.find(([pattern]) => pattern.test(words));
  return found ? found[1](mainsVoltageV) : "";
}

/** Texts that stand for the class in a sheet, each once, as they are written. */
export function classTexts(sheet: RegisterSheet, columns: RegisterMapping["columns"]): string[] {
  const at = columns.deviceClass ?? columns.description ?? columns.kind;
  if (at === undefined) return [];
  const texts = new Map<string, string>();
  for (const { cells } of sheet.rows.slice(headingRow(sheet) + 1)) {
    const text = cells[at] ?? "";
    if (text !== "" && !texts.has(normalHeading(text))) texts.set(normalHeading(text), text);
  }
  return [...texts.values()];
}

/** A mapping to begin with: what the headings and the words for the sort of device say by themselves. */
export function proposeRegisterMapping(
  sheet: RegisterSheet,
  site: { mainsVoltageV: number; defaultZoneCode: string },
): RegisterMapping {
  const columns = columnsOf(sheet.rows[headingRow(sheet)]?.cells ?? []);
  const classes = Object.fromEntries(
    classTexts(sheet, columns).map((text) => [normalHeading(text), proposeClass(text, site.mainsVoltageV)]),
  );
  const { defaultZoneCode } = site;
  return { sheet: sheet.name, columns, defaultZoneCode, labelPrefix: "", classes };
}
