import type { Evidence } from "@/lib/findings/finding";
import type { WeatherFinding } from "./weather-file";

/** The sentence for a finding about a weather file: what, how much, and what was done. */
export function weatherFindingText({ code, evidence }: WeatherFinding): string {
  const of = (key: string): string => textOf(evidence, key);
  switch (code) {
    case "missing-values-filled":
      return `${of("hours")} hours had no outdoor air temperature and were filled from their neighbours, in ${of("gaps")} gaps of at most ${of("longestGapHours")} h (first lines: ${of("lines")}).`;
    case "values-out-of-range":
      return `${of("count")} values lay outside -70 to 70 °C and were treated as missing (lines ${of("lines")}: ${of("values")}).`;
    case "leap-day-dropped":
      return `29 February was left out (${of("rows")} rows from line ${of("firstLine")}): a weather year has 365 days.`;
    case "months-from-different-years":
      return `The months come from different years (${of("years")}), as in a typical year. Hours are placed by month, day and hour.`;
    case "rows-not-in-calendar-order":
      return `The rows do not run from January to December (line ${of("firstLine")} steps back). They were put in calendar order.`;
    case "header-line-missing":
      return `The header has no ${of("name")} line. It is not needed here.`;
    case "daylight-saving-in-header":
      return `The header gives daylight saving dates (${of("start")} to ${of("end")}). The rows are read as standard time, as the format says.`;
    case "offset-far-from-longitude":
      return `The file's clock is ${of("utcOffsetHours")} h from UTC, but longitude ${of("longitude")} suggests about ${Number(evidence.solarOffsetHours).toFixed(1)} h. Check the time zone and longitude in the first line: hours may be shifted.`;
  }
}

function textOf(evidence: Evidence, key: string): string {
  const value = evidence[key];
  return Array.isArray(value) ? value.join(", ") : String(value ?? "");
}
