import { AIR_HEAT_KJ_PER_M3K } from "@/lib/energy-model/air-heat";
import { fanPowerFraction } from "@/lib/energy-model/fan-power";
import type { Term, Working } from "@/lib/working/working";
import type { LiveBuilding, SharedNumbers } from "../live-building";
import { SAVING_PARTS, type SavingPart } from "../live-picture";
import type { Energy, EnergySaved } from "./energy-saved";
import { bought } from "./money";

type ZoneLine = EnergySaved["byZone"][number];
type Kind = "electricKwh" | "heatKwh";

/** A part's energy before any of it is undone: of the zones, or of the fan that serves them all. */
export function partEnergyWorking(
  building: LiveBuilding,
  saved: EnergySaved,
  part: SavingPart,
  kind: Kind,
  stated: SharedNumbers,
): Working {
  const value = bought(saved.parts[part], building.isHeatElectric)[kind];
  const result = { symbol: "X", label: SAVING_PARTS[part], value, unit: "kWh a year" };
  if (part === "fan") return fanWorking(building, saved, stated, result);
  const terms = saved.byZone.flatMap((line): Term[] => {
    const working = zoneWorking(building, line, part, kind, stated);
    if (!working || working.result.value === 0) return [];
    return [{ ...working.result, origin: "computed", working }];
  });
  return { formula: terms.length > 0 ? "X = sum of the zones" : "X = 0", terms, result };
}

/** A zone's energy of one part. The terms that are worked out along the way are said in their labels. */
function zoneWorking(
  building: LiveBuilding,
  line: ZoneLine,
  part: SavingPart,
  kind: Kind,
  stated: SharedNumbers,
): Working | null {
  const { zone, effect, levers } = line;
  const energy = bought(energyOf(line, part), building.isHeatElectric);
  const of = (name: keyof typeof building.shared): Term => building.shared[name].term;
  const term = (symbol: string, label: string, value: number, unit: string): Term => ({
    symbol,
    label,
    value,
    unit,
    origin: "computed",
    source: "zone trends carried to the weather year",
    href: `/zones/${zone.zoneId}`,
  });
  const result = { symbol: `X_{${zone.code}}`, label: `zone ${zone.code}`, value: energy[kind], unit: "kWh a year" };
  const area: Term = { ...term("A_z", "floor area", zone.floorAreaM2, "m²"), source: "zone record", href: "/zones" };
  if (part === "setpoint" || part === "deadband") {
    const isSetpoint = part === "setpoint";
    const acting = line.acting?.[isSetpoint ? "cooling" : "deadband"];
    const riseK = isSetpoint ? levers["cooling-setpoint"] : effect.rises.deadband;
    const hours = term(
      "H",
      `hours ${isSetpoint ? "held by the cooling setpoint" : "at minimum airflow"} in the season and hours of the proposal`,
      acting?.hours ?? 0,
      "h",
    );
    const rise = term("a", isSetpoint ? "rise of the cooling setpoint" : "rise of zone air", riseK, "K");
    const then = term(
      "k_m",
      "the plant's share of the cooling in these hours, over its mean",
      acting && acting.hours > 0 ? acting.coolingHours / acting.hours : 0,
      "",
    );
    const terms = [of("heatLossPerArea"), area, hours, rise, of("mechanicalFraction"), then, of("cop")];
    return { formula: `${result.symbol} = u * A_z * H * a * m * k_m / (1000 * COP)`, terms, result };
  }
  if (part === "reheat") {
    const heat = term(
      "Q_r",
      `heat bought less in reheat: air, supply air and setpoint together`,
      effect.reheatHeatKwh,
      "kWh",
    );
    const cold = term("E_r", "cooling electricity of the air that is not reheated", effect.reheatKwh, "kWh");
    const notes = [reheatWords(line, stated)];
    if (building.isHeatElectric) return { formula: `${result.symbol} = E_r + Q_r`, terms: [cold, heat], result, notes };
    const own = kind === "electricKwh" ? cold : heat;
    return { formula: `${result.symbol} = ${own.symbol}`, terms: [own], result, notes };
  }
  if (part === "heaters") {
    const energyTerm = term(
      "E_h",
      `energy of ${zone.heaters.count} space heaters in a year`,
      zone.heaters.energyKwh,
      "kWh",
    );
    const plug: Term[] = [
      { ...energyTerm, source: "device register", href: "/devices" },
      of("heaterInSeasonFraction"),
      term("g", "share of that energy that goes, in the season and hours of the proposal", line.energyGone, ""),
    ];
    const plugKwh = zone.heaters.energyKwh * stated.heaterInSeasonFraction * line.energyGone;
    const rest = plugKwh === 0 ? 0 : energy[kind] / plugKwh;
    plug.push(
      term(
        "k",
        kind === "heatKwh"
          ? "plant heat that they replaced, for a kWh"
          : "with the cooling that removes their heat, for a kWh",
        rest,
        "",
      ),
    );
    const symbol = of("heaterInSeasonFraction").symbol;
    return { formula: `${result.symbol} = E_h * ${symbol} * g * k`, terms: plug, result };
  }
  const added = term(
    "E_n",
    "electricity of foot warmers and of a desk fan for each person newly warm",
    line.addedKwh,
    "kWh",
  );
  return kind === "heatKwh" ? null : { formula: `${result.symbol} = 0 - E_n`, terms: [added], result };
}

function energyOf({ effect, heaters, addedKwh }: ZoneLine, part: SavingPart): Energy {
  if (part === "setpoint") return { electricKwh: effect.setpointKwh, heatKwh: 0 };
  if (part === "deadband") return { electricKwh: effect.deadbandKwh, heatKwh: 0 };
  if (part === "reheat") return { electricKwh: effect.reheatKwh, heatKwh: effect.reheatHeatKwh };
  if (part === "heaters") return heaters;
  return { electricKwh: -addedKwh, heatKwh: 0 };
}

const figure = (value: number): string => value.toPrecision(4);

/** The airflow side of a zone in reheat, in words with its numbers. */
function reheatWords({ acting, effect, levers }: ZoneLine, stated: SharedNumbers): string {
  const { minimumM3ps } = effect;
  const hours = figure(acting?.reheat.hours ?? 0);
  const heating = `heating setpoint down ${levers["heating-setpoint"]} K`;
  if (!minimumM3ps) return `${hours} h of reheat a year; ${heating}.`;
  return `${hours} h of reheat a year; minimum airflow from ${figure(minimumM3ps.before)} to ${figure(minimumM3ps.after)} m³/s, supply air up ${levers["supply-air-temp"]} K, ${heating}; air carries ${AIR_HEAT_KJ_PER_M3K} kJ/m³K, supply air ${figure(stated.supplyAirTemp)} °C.`;
}

function fanWorking(
  building: LiveBuilding,
  { fan }: EnergySaved,
  stated: SharedNumbers,
  result: Working["result"],
): Working {
  if (fan.designHours === 0) return { formula: "X = 0", terms: [], result };
  const [before, after] = [fan.before / fan.designHours, fan.after / fan.designHours];
  const term = (symbol: string, label: string, value: number, unit: string): Term => ({
    symbol,
    label,
    value,
    unit,
    origin: "computed",
    source: "airflow of all zones with variable airflow",
  });
  return {
    formula: `X = (k_f * w_f * G * (f_0 - f_1) * g + w_f * B * f_1) * (1 + m / COP)`,
    terms: [
      { ...building.shared.fanSavingFactor.term, symbol: "k_f" },
      { ...building.shared.fanPowerPerAirflow.term, symbol: "w_f" },
      term("G", "air at design in the season hours", fan.designHours, "m³/s·h"),
      term("f_0", `share of design power at ${figure(100 * before)} % of the airflow`, fanPowerFraction(before), ""),
      term("f_1", `share of design power at ${figure(100 * after)} % of the airflow`, fanPowerFraction(after), ""),
      term("g", "share of the spared air that lies in the season and hours of the proposal", fan.actingShare, ""),
      term("B", "air at design in the hours that the schedule leaves out", fan.cutHours, "m³/s·h"),
      building.shared.mechanicalFraction.term,
      building.shared.cop.term,
    ],
    result,
    notes: [
      "A fan's power ends as heat in the air, which the plant takes out again.",
      ...(stated.fanSavingFactor < 1 ? ["Without a reset of static pressure a fan saves less than its curve."] : []),
    ],
  };
}
