import type { QuantityWords } from "../quantity-words";
import { ROW_OF } from "./row-of";
import type { Cause } from "./zone-evidence";

/**
 * What a cause rests on, as one line: the row of the decision table, the trends that were read, when the sign was seen, and
 * what it was held against.
 */
export function evidenceWords(cause: Cause, words: QuantityWords): string {
  const { evidence: e, code } = cause;
  const trends = Array.isArray(e.trends) ? e.trends.map((each) => trendName(String(each))).join(", ") : "";
  const parts = [
    ROW_OF[code] !== null ? `Row ${ROW_OF[code]} of the decision table` : "Hours and degree-hours by state",
    trends ? `read from the trend${(e.trends as readonly unknown[]).length === 1 ? "" : "s"} of ${trends}` : "",
    typeof e.seenFromUtcSeconds === "number"
      ? `seen from ${words.date(e.seenFromUtcSeconds)} to ${words.date(Number(e.seenToUtcSeconds) - 1)}, mostly ${hours(e.fromHour, e.untilHour)}`
      : "",
    typeof e.minimumAirflowM3ps === "number"
      ? `held against a minimum airflow of ${words.airflow(e.minimumAirflowM3ps)} (${ORIGIN[String(e.minimumAirflowOrigin)] ?? "origin unknown"})`
      : "",
  ];
  return `${parts.filter((part) => part !== "").join("; ")}.`;
}

const ORIGIN: Record<string, string> = {
  entered: "entered in the zone's record",
  "airflow-setpoint-trend": "read off the airflow setpoint",
  estimated: "estimated from the airflow trend",
};

const trendName = (kind: string): string => kind.replaceAll("-", " ").replace(/ temp$/, " temperature");

const hours = (from: unknown, until: unknown): string =>
  `${String(from).padStart(2, "0")} to ${String(until).padStart(2, "0")} h`;
