import type { Evidence, Finding } from "@/lib/findings/finding";
import { formatNumber } from "@/lib/units/format";

/** What a finding of an assessment says to a facilities manager, and what to do about it ("" when nothing). */
export type FindingWords = { what: string; action: string };

const figure = (value: Evidence[string] | undefined, significantDigits = 2): string =>
  typeof value === "number" && Number.isFinite(value) ? formatNumber(value, { significantDigits }) : String(value);
const list = (value: Evidence[string] | undefined): string => (Array.isArray(value) ? value.join(", ") : String(value));

const SENTENCES: Record<string, (e: Evidence) => FindingWords> = {
  // Inputs that stop the assessment
  "nothing-known": () => ({
    what: "Nothing is known yet that a cost could be counted from: no zone has trends that can be used, the present cooling setpoint is not stated, and no space heater is registered.",
    action: "Add the zones, then bring in trend logs and a weather year, or state the present cooling setpoint.",
  }),
  "floor-area-impossible": (e) => ({
    what: `The floor area of ${figure(e.floorAreaM2, 4)} m² is not above 0.`,
    action: "Correct it in the building's settings.",
  }),
  "price-impossible": (e) => ({
    what: `A price of ${String(e.price)} is below 0 or no number.`,
    action: "Correct the prices in the building's settings.",
  }),
  "cop-implausible": (e) => ({
    what: `The cooling plant's COP of ${figure(e.cop)} (${figure(e.low)} to ${figure(e.high)}) leaves the limits of ${figure(e.least)} to ${figure(e.most)}.`,
    action: "Correct the assumption: a seasonal COP of kWh of cooling for each kWh of electricity.",
  }),
  "air-temperatures-crossed": (e) => ({
    what: `The return air may be as cold as ${figure(e.returnLowC, 3)} °C and the supply air as warm as ${figure(e.supplyHighC, 3)} °C.`,
    action: "Correct the two assumptions so that their ranges do not meet.",
  }),
  "target-impossible": (e) => ({
    what: `The target zone air temperature of ${figure(e.targetC, 3)} °C is not well above the supply air (up to ${figure(e.supplyHighC, 3)} °C), or is above 32 °C.`,
    action: "Correct the target in the building's settings.",
  }),
  "assumption-not-above-zero": (e) => ({
    what: `The ${String(e.label)} has a low end of ${figure(e.low)}; other values are divided by it.`,
    action: "Give it a low end above 0.",
  }),
  "weather-not-a-year": (e) => ({
    what: `The weather year has ${String(e.hours)} hours and ${String(e.occupiedHours)} occupied parts; 8,760 of each are needed.`,
    action: "Import the weather file again.",
  }),

  // Zones, devices and records
  "zone-areas-exceed-floor-area": (e) => ({
    what: `The zones have ${figure(e.zonesM2, 3)} m² together and the building ${figure(e.floorAreaM2, 3)} m²${Number(e.zonesWithoutArea) > 0 ? `; ${e.zonesWithoutArea} zones without an area are left with none` : ""}.`,
    action: "Correct the areas of the zones or of the building.",
  }),
  "zone-area-shared": (e) => ({
    what: `Zones ${list(e.zones)} have no floor area and share what the others leave: ${figure(e.eachM2, 3)} m² each.`,
    action: "Enter their floor areas.",
  }),
  "fans-not-counted": (e) => ({
    what: `The personal fans (${e.fans} in ${e.zones} ${e.zones === 1 ? "zone" : "zones"}) are not counted: a fan is no cost of overcooling.`,
    action: "",
  }),
  "heater-power-unknown": (e) => ({
    what: `Heater ${e.device} in zone ${e.zone} has hours at settings whose power is not known (${list(e.settings)}); their energy is missing here.`,
    action: "Measure them, or take the usual power of its sort.",
  }),
  "heater-energy-impossible": (e) => ({
    what: `Heater ${e.device} in zone ${e.zone} is left out: ${figure(e.energyKwh, 3)} kWh a year (${figure(e.lowKwh, 3)} to ${figure(e.highKwh, 3)}) cannot be, at most ${figure(e.mostKwh, 3)} kWh can.`,
    action: "Correct its power or hours.",
  }),
  "record-of-another-target": (e) => ({
    what: `The record of zone ${e.zone} was worked out for a target of ${figure(e.recordTargetC, 3)} °C, and the building's is ${figure(e.targetC, 3)} °C; it is left out.`,
    action: "Work the record out again.",
  }),
  "record-without-hours": (e) => ({
    what: `The record of zone ${e.zone} has no occupied hours of the cooling season and is left out.`,
    action: "Import trends of a warmer time.",
  }),
  "zone-air-implausible": (e) => ({
    what: `Zone ${e.zone} reads ${figure(e.meanBelowTargetK)} K below the target on average, over ${figure(e.mostK)} K: a sensor fault is likelier than overcooling, and its record is left out.`,
    action: "Compare the sensor with a calibrated logger.",
  }),
  "zones-without-record": (e) => ({
    what: `${Array.isArray(e.zones) ? e.zones.length : 0} of ${e.ofZones} zones (${figure(e.areaPct)} % of the floor area: ${list(e.zones)}) have no usable record. Their heaters and reports are counted, their overcooling is not.`,
    action: "Import their trends.",
  }),
  "undetermined-hours-split": (e) => ({
    what: `In zones ${list(e.zones)} the trends do not tell the state for ${figure(e.hours, 3)} h a year (${figure(e.sharePct)} % of the measured zones' hours); those hours are split by the assumed shares.`,
    action: "Trend airflow and reheat valve of these zones.",
  }),
  "fault-hours-not-priced": (e) => ({
    what: `Zones ${list(e.zones)} spend ${figure(e.hours, 3)} h a year in a fault, ${figure(e.overcoolingKh, 3)} K·h below the target. No setpoint mends that, so it is not in the cost.`,
    action: "Repair the boxes; the diagnosis of each zone says what to look for.",
  }),
  "idle-hours-not-priced": (e) => ({
    what: `Zones with a unit of their own (${list(e.zones)}): it stands idle for ${figure(e.hours, 3)} h of the season a year, and the zone air is ${figure(e.overcoolingKh, 3)} K·h below the target in them. No setpoint and no airflow is the reason, so it is not in the cost.`,
    action: "Look for what else cools these zones; their diagnosis says what the trends show.",
  }),

  // What is missing
  "weather-missing": () => ({
    what: "Without a weather year nothing better than the screening can be worked out.",
    action: "Import an EPW or TMY3 file of the place.",
  }),
  "setpoint-missing": () => ({
    what: "The present cooling setpoint is not known, so it cannot be held against the target.",
    action: "State it, or import setpoint trends.",
  }),
  "only-heaters-and-reports": () => ({
    what: "Only space heaters and reports are counted; the cost of the setpoint and of the airflow is missing.",
    action: "State the present cooling setpoint.",
  }),
  "demand-inside-blended-price": (e) => ({
    what: `A blended price has the demand charge inside, so no demand line is added${e.demandPriceIgnored ? " and the demand price is not used" : ""}.`,
    action: "Enter the marginal energy price and the demand price from the tariff.",
  }),
  "demand-price-missing": () => ({
    what: "No demand price is given, so nothing is counted for the billed peak.",
    action: "Enter it if the tariff has one.",
  }),
  "heat-price-missing": () => ({
    what: "The heating energy has no price: it is shown in kWh and left out of the money.",
    action: "Enter the price of a kWh in the building's settings.",
  }),
  "complaint-price-missing": (e) => ({
    what: `${figure(e.reports, 3)} cold reports a year are not priced: the hours and labour price of a complaint are not given.`,
    action: "Enter your own figures if you keep them; there is no default.",
  }),
  "meter-unused": (e) => ({
    what: `The electricity meter (${list(e.meters)}) does not calibrate this figure: it has no model yet that says what a setpoint is worth.`,
    action: "The energy meter page says what is missing.",
  }),

  // Figures to doubt
  "electricity-above-national-estimate": (e) => ({
    what: `${figure(e.kwhPerM2)} kWh/m² a year is more than the ${figure(e.mostKwhPerM2)} kWh/m² that overcooling is estimated to cost the average US building.`,
    action: "Check areas, hours and airflows before showing this figure.",
  }),
  "large-share-of-cooling-energy": (e) => ({
    what: `Setpoint, minimum airflow and fan come to ${figure(e.sharePct)} % of the cooling and fan energy of an average office (${figure(e.typicalKwhPerM2, 3)} kWh/m²); over ${figure(e.mostPct)} % is rare.`,
    action: "Hold it against the building's own meter.",
  }),
  "percent-beyond-weather": (e) => ({
    what: `The screening takes ${figure(e.percentPerK)} % a kelvin and the weather allows at most ${figure(e.mostPercentPerK)} %.`,
    action: "Lower the percentage for this climate.",
  }),
  "percent-above-published": (e) => ({
    what: `Setpoint, minimum airflow and fan come to ${figure(e.percentPerK)} % a kelvin of an average office's cooling and fan electricity (${figure(e.typicalKwhPerM2, 3)} kWh/m²) over ${figure(e.riseK)} K; simulations and trials of such systems found ${figure(e.low)} to ${figure(e.high)} %. The setpoint alone is ${figure(e.setpointPct)} % of it: the rest is air above what zones need, which no setpoint moves.`,
    action: "Hold minimum airflows and the building's own cooling energy against these figures before quoting them.",
  }),
  "percent-below-published": (e) => ({
    what: `Setpoint, minimum airflow and fan come to ${figure(e.percentPerK)} % a kelvin of an average office's cooling and fan electricity (${figure(e.typicalKwhPerM2, 3)} kWh/m²) over ${figure(e.riseK)} K; simulations and trials of such systems found ${figure(e.low)} to ${figure(e.high)} %. Few occupied hours, an economizer or zones without a record make it so.`,
    action: "Check the occupied hours and how many zones have trends.",
  }),
  "cost-negative": (e) => ({
    what: `The cost comes out below 0 (${figure(e.p50)}): the heat that heaters replace outweighs the rest.`,
    action: "Check the heating price and the share of reheat.",
  }),
  "proofs-on-same-days": (e) => ({
    what: `The proofs of ${list(e.proposals)} read the same days of the meter: what each saved cannot be told from the other, and the cost is verified by neither.`,
    action: "Verify one of them with a window after that ends before the other change began.",
  }),
  "range-narrower-than-usual": (e) => ({
    what: `The 80 % range, ${figure(e.lowPct)} to ${figure(e.highPct)} % of the middle, is narrower than this method's usual ${figure(e.usualLowPct)} to ${figure(e.usualHighPct)} %: it holds the inputs' spread, not what the model itself leaves out.`,
    action: "Do not lean on the narrowness.",
  }),
  inconsistent: (e) => ({
    what: `The ranges of tier ${e.tier} (${figure(e.p10)} to ${figure(e.p90)}) and tier ${e.otherTier} (${figure(e.otherP10)} to ${figure(e.otherP90)}) do not overlap.`,
    action: `Look first at: ${list(e.widestInputs)}.`,
  }),
};

export const OVERCOOLING_FINDING_CODES: readonly string[] = Object.keys(SENTENCES);

export function overcoolingFindingWords(finding: Finding): FindingWords {
  const say = SENTENCES[finding.code];
  if (!say) throw new Error(`no sentence for the finding "${finding.code}"`);
  return say(finding.evidence);
}
