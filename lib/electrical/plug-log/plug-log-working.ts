import type { Term, Working } from "@/lib/working/working";
import type { PlugDay, PlugLogFigures, PlugState } from "./plug-log-figures";
import { SEASON_CONFIDENCE, type SeasonEstimate, type SeasonStratum } from "./season-estimate";

/** The working of a log's energy: mean power times the time that readings stand for. */
export function logEnergyWorking(figures: PlugLogFigures, fileName: string): Working {
  return {
    formula: "E = P̄·h / 1000",
    terms: [
      term("P̄", "mean power over the readings", figures.meanPowerW, "W", "measured", fileName),
      term("h", "time that the readings stand for", figures.loggedHours, "h", "measured", fileName),
    ],
    result: { symbol: "E", label: "energy in the log", value: figures.energyKwh, unit: "kWh" },
    notes: [
      `${figures.rows.accepted} readings, each held until the next, ${figures.longestHoldSeconds} s at most; longer steps are gaps (${figures.gaps}) and count as nothing.`,
    ],
  };
}

/** The working of what was used outside occupied hours. */
export function outsideWorking({ outsideOccupied }: PlugLogFigures, fileName: string): Working {
  const { hours, energyKwh } = outsideOccupied;
  return {
    formula: "E = P̄·h / 1000",
    terms: [
      term("P̄", "mean power while it was on", meanW(energyKwh, hours), "W", "measured", fileName),
      term("h", "time on outside occupied hours", hours, "h", "measured", fileName),
    ],
    result: { symbol: "E", label: "energy outside occupied hours", value: energyKwh, unit: "kWh" },
    notes: [
      "Occupied hours are those of the building's settings; each reading counts by the minute in which it begins.",
    ],
  };
}

/** The working of one day's energy. */
export function dayWorking({ energyKwh, loggedHours }: PlugDay, fileName: string): Working {
  return {
    formula: "E = P̄·h / 1000",
    terms: [
      term("P̄", "mean power over the day's readings", meanW(energyKwh, loggedHours), "W", "measured", fileName),
      term("h", "time of the day that was logged", loggedHours, "h", "measured", fileName),
    ],
    result: { symbol: "E", label: "energy of the day", value: energyKwh, unit: "kWh" },
  };
}

const meanW = (energyKwh: number, hours: number): number => (hours === 0 ? 0 : (energyKwh * 1000) / hours);

/** The working of a level's energy and, for one that was selected, of its duty. */
export function stateEnergyWorking(state: PlugState, label: string, fileName: string): Working {
  return {
    formula: "E = P·h_sel·d / 1000",
    terms: [
      term("P", "mean power at this level", state.powerW, "W", "measured", fileName),
      term("h_sel", "time for which it was selected", state.selectedHours, "h", "computed", fileName),
      {
        ...term("d", "duty while selected", state.dutyFraction, "", "computed"),
        working: dutyWorking(state, fileName),
      },
    ],
    result: {
      symbol: "E",
      label: `energy at ${label}`,
      value: (state.powerW * state.selectedHours * state.dutyFraction) / 1000,
      unit: "kWh",
    },
    notes: ["Time that the load spends at this level in the pauses of a higher setting counts to that setting."],
  };
}

function dutyWorking(state: PlugState, fileName: string): Working {
  return {
    formula: "d = h_on / h_sel",
    terms: [
      term(
        "h_on",
        "time at this level, pauses of higher settings left out",
        state.dutyFraction * state.selectedHours,
        "h",
        "measured",
        fileName,
      ),
      term(
        "h_sel",
        "runs at this level with the pauses of the thermostat between them",
        state.selectedHours,
        "h",
        "measured",
        fileName,
      ),
    ],
    result: { symbol: "d", label: "duty while selected", value: state.dutyFraction, unit: "" },
    notes: [
      "A pause belongs to the setting when the same level follows it within 30 min (judgement: office heaters cycle in minutes).",
    ],
  };
}

type Done = Extract<SeasonEstimate, { status: "ok" }>;

/** The working of a season's energy: days of each kind times the mean of the logged ones. */
export function seasonWorking(estimate: Done, fileName: string): Working {
  const terms: Term[] = estimate.strata.flatMap((stratum, at) => {
    const sub = at === 0 ? "a" : "b";
    return [
      term(
        `N_${sub}`,
        `${stratum.name} of the season`,
        stratum.days,
        "days",
        "entered",
        "Occupied hours of the building",
      ),
      {
        ...term(`e_${sub}`, `mean of the logged ${stratum.name}`, stratum.meanKwh, "kWh a day", "computed"),
        working: meanWorking(stratum, sub, fileName),
      },
    ];
  });
  const words = {
    "student-t": "Student's t over days",
    "bootstrap-by-day": "resampling the logged days 5,000 times",
  }[estimate.method];
  return {
    formula: estimate.strata.length > 1 ? "E = N_a·e_a + N_b·e_b" : "E = N_a·e_a",
    terms,
    result: { symbol: "E", label: "energy of the season", value: estimate.energyKwh.value, unit: "kWh" },
    notes: [
      `The ${SEASON_CONFIDENCE * 100} % interval comes from ${words}, with √(1 - n/N) for the share of the season that was logged.`,
      ...estimate.leftOut.map(
        ({ name, days, loggedDays }) =>
          `${days} ${name} of the season are not in this figure: ${loggedDays} of them were logged, and fewer than 5 say nothing.`,
      ),
    ],
    source: "Stratified sampling, Cochran, Sampling Techniques, 3rd edition, eq. 5.1 and 5.7 (from memory)",
  };
}

function meanWorking(stratum: SeasonStratum, sub: string, fileName: string): Working {
  const { loggedDays, meanKwh } = stratum;
  return {
    formula: `e_${sub} = Σe / n`,
    terms: [
      term("Σe", `energy of the whole ${stratum.name} logged`, meanKwh * loggedDays, "kWh", "measured", fileName),
      term("n", `whole ${stratum.name} logged`, loggedDays, "days", "measured", fileName),
    ],
    result: { symbol: `e_${sub}`, label: `mean of the logged ${stratum.name}`, value: meanKwh, unit: "kWh a day" },
    notes: [
      `Standard deviation between days ${Number(stratum.deviationKwh.toPrecision(3))} kWh, skewness ${Number(stratum.skewness.toFixed(2))}.`,
    ],
  };
}

function term(
  symbol: string,
  label: string,
  value: number,
  unit: string,
  origin: Term["origin"],
  source?: string,
): Term {
  return { symbol, label, value, unit, origin, source };
}
