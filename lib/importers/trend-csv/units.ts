import type { FileUnit } from "./trend-file";

const SPELLINGS: Record<FileUnit, string[]> = {
  degF: [
    "°f",
    "ºf",
    "degf",
    "deg f",
    "deg. f",
    "deg_f",
    "degrees f",
    "degree f",
    "fahrenheit",
    "degrees fahrenheit",
    "[degf]",
    "℉",
    "f",
  ],
  degC: [
    "°c",
    "ºc",
    "degc",
    "deg c",
    "deg. c",
    "deg_c",
    "degrees c",
    "degree c",
    "celsius",
    "degrees celsius",
    "cel",
    "℃",
    "c",
  ],
  kelvin: ["k", "kelvin", "degk", "deg k", "°k"],
  percent: ["%", "pct", "percent", "per cent", "%open", "% open", "pct open"],
  percentRH: [
    "%rh",
    "% rh",
    "rh%",
    "rh %",
    "percent rh",
    "pct rh",
    "%r.h.",
    "%rel. humidity",
    "percentrh",
    "percent relative humidity",
  ],
  W: ["w", "watt", "watts"],
  kW: ["kw", "kilowatt", "kilowatts"],
  kWh: ["kwh", "kw-h", "kw·h", "kw-hr", "kwhr", "kilowatt hours", "kilowatt-hours"],
  cfm: ["cfm", "ft3/min", "ft³/min", "cu ft/min", "cubic feet per minute"],
  m3PerHour: ["m3/h", "m³/h", "m3/hr", "m³/hr", "m3h", "cmh", "cubic meters per hour", "cubic metres per hour"],
  m3PerSecond: ["m3/s", "m³/s", "cubic meters per second", "cubic metres per second"],
  litrePerSecond: ["l/s", "lps", "liters per second", "litres per second"],
  ppm: ["ppm", "parts per million", "ppm co2"],
};

/** Units that are recognised as such, so that they leave the name and raise no question, but are not converted. */
const OTHER_UNITS =
  "in/wc inwc in.wc in.w.c. in.wg inwg inh2o in.h2o in. in h2o iwc wc pa kpa hpa mbar bar psi psig psid hz khz rpm a ma amp amps v mv volt volts kv va kva var kvar pf hp gpm l/min l/h lpm m/s fpm ft/min mph lux lx fc ppb ug/m3 µg/m3 μg/m3 mg/m3 ton tons tr btu btuh btu/h btu/hr mbh kbtu mmbtu therm therms wh mwh mw j kj mj gj kj/kg btu/lb h hr hrs hours hour min minutes s sec secs seconds ms m3 m³ gal ft3 db dba w/m2 w/m² °d deg ft m in mm kg/h kg/s lb/h g/kg gr/lb vdc vac"
    .split(" ")
    .concat(
      "in wc",
      "in h2o",
      "in. wc",
      "in. w.c.",
      "inches of water",
      "deg days",
      "no units",
      "no-units",
      "none",
      "unitless",
    );

const FILE_UNIT_BY_SPELLING = new Map<string, FileUnit>();
for (const [unit, spellings] of Object.entries(SPELLINGS)) {
  for (const spelling of spellings) FILE_UNIT_BY_SPELLING.set(spelling, unit as FileUnit);
}
const OTHER = new Set(OTHER_UNITS);

/** What a unit text means: a unit that is converted, another known unit (`unit: null`), or null when it is no unit. */
export function readUnit(text: string): { unitAsWritten: string; unit: FileUnit | null } | null {
  const unitAsWritten = text.trim();
  const key = unitAsWritten.toLowerCase().replace(/\s+/g, " ");
  if (key === "") return null;
  const unit = FILE_UNIT_BY_SPELLING.get(key);
  if (unit) return { unitAsWritten, unit };
  return OTHER.has(key) ? { unitAsWritten, unit: null } : null;
}

export type NameAndUnit = { name: string; unitAsWritten: string | null; unit: FileUnit | null };

const BRACKETS = /^(.*?)\s*(?:\(([^()]*)\)|\[([^[\]]*)\]|\{([^{}]*)\})\s*$/s;
/** Written without brackets, a unit has to be unmistakable: "Zone C" is a zone. */
const BARE =
  /^(.*?)(?:\s*,\s*|[\s_]+)(°\s?[FC]|º[FC]|deg[FC]|deg [FC]|cfm|kWh|kW|ppm|%\s?RH|%|m3\/h|m³\/h|m3\/s|m³\/s|L\/s|l\/s)$/i;

/** Splits `Zone 2 Temp (°F)`, `Supply Flow, cfm`, `zone_temp_degC` into name and unit. Brackets that hold no unit stay. */
export function splitUnit(heading: string): NameAndUnit {
  const whole = heading.trim();
  const bracketed = BRACKETS.exec(whole);
  if (bracketed) {
    const read = readUnit(bracketed[2] ?? bracketed[3] ?? bracketed[4] ?? "");
    if (read) return { name: (bracketed[1] as string).trim(), ...read };
  }
  const bare = BARE.exec(whole);
  if (bare && (bare[1] as string).trim() !== "") {
    const read = readUnit(bare[2] as string);
    if (read) return { name: (bare[1] as string).trim(), ...read };
  }
  // A meter's heading is often its unit and nothing else.
  const alone = /^kwh?$/i.test(whole) ? readUnit(whole) : null;
  return { name: whole, unitAsWritten: null, unit: null, ...alone };
}
