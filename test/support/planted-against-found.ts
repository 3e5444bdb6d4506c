import type { DemoCause, MissingTrend, PlantedCause } from "@/db/seed/planted-causes";
import type { ZoneDiagnosis } from "@/lib/trends/diagnosis/diagnose-zone";
import type { CauseCode } from "@/lib/trends/diagnosis/zone-evidence";

/** What has to be said of a zone for its planted cause to count as found. */
type Finds = {
  verdict: ZoneDiagnosis["verdict"];
  /** One of these at least; none are asked of a healthy zone. */
  causes: readonly CauseCode[];
  raising: readonly ZoneDiagnosis["raisingSetpointHelps"][];
};

const FINDS: Record<DemoCause, Finds> = {
  healthy: { verdict: "healthy", causes: [], raising: ["no"] },
  "setpoint-too-low": { verdict: "setpoint-first", causes: ["setpoint-too-low"], raising: ["yes"] },
  "minimum-airflow-too-high": {
    verdict: "minimum-airflow-first",
    causes: ["minimum-airflow-overcooling"],
    raising: ["no"],
  },
  // The cure is the same as above, and the reheat has to be named.
  "reheat-fighting": { verdict: "minimum-airflow-first", causes: ["reheat-at-minimum"], raising: ["no"] },
  "biased-sensor": { verdict: "fault-first", causes: ["sensor-bias"], raising: ["no"] },
  // Of an override the setpoint shows its date, its missing setback or both; putting it back is raising it.
  "override-left-in": {
    verdict: "setpoint-first",
    causes: ["setpoint-stepped-down", "setback-not-followed"],
    raising: ["yes", "partly"],
  },
  "cold-desk": { verdict: "personal-need", causes: ["one-cold-desk"], raising: ["no"] },
  "too-little-airflow": { verdict: "too-hot", causes: ["short-of-air"], raising: ["no"] },
  "heater-at-thermostat": { verdict: "fault-first", causes: ["heater-warms-thermostat"], raising: ["no"] },
  "packaged-unit-overshoots": { verdict: "setpoint-first", causes: ["short-compressor-runs"], raising: ["yes"] },
};

/** Causes against which a higher setpoint does nothing, or the wrong thing. */
const SETPOINT_USELESS: readonly DemoCause[] = [
  "minimum-airflow-too-high",
  "reheat-fighting",
  "biased-sensor",
  "cold-desk",
  "too-little-airflow",
  "heater-at-thermostat",
];

export type Compared = {
  zoneCode: string;
  planted: DemoCause;
  missingTrend: MissingTrend | null;
  verdict: ZoneDiagnosis["verdict"] | "no record";
  causes: readonly CauseCode[];
  right: boolean;
  /** A higher setpoint is proposed where the planted cause makes it useless. */
  uselessSetpoint: boolean;
};

/** Each zone's planted cause beside what is said of it. */
export function plantedAgainstFound(
  planted: readonly PlantedCause[],
  said: ReadonlyMap<string, ZoneDiagnosis>,
): Compared[] {
  return planted.map(({ zoneCode, cause, missingTrend }) => {
    const diagnosis = said.get(zoneCode);
    const causes = diagnosis?.causes.map(({ code }) => code) ?? [];
    return {
      zoneCode,
      planted: cause,
      missingTrend: missingTrend ?? null,
      verdict: diagnosis?.verdict ?? "no record",
      causes,
      right: diagnosis !== undefined && isRight(diagnosis, causes, cause, missingTrend),
      uselessSetpoint:
        SETPOINT_USELESS.includes(cause) &&
        (diagnosis?.verdict === "setpoint-first" || diagnosis?.verdict === "both-minimum-first"),
    };
  });
}

function isRight(
  diagnosis: ZoneDiagnosis,
  causes: readonly CauseCode[],
  planted: DemoCause,
  missing: MissingTrend | undefined,
): boolean {
  if (missing) return diagnosis.verdict === "undetermined" && diagnosis.missingPoints.join() === missing;
  const wanted = FINDS[planted];
  if (diagnosis.verdict !== wanted.verdict || !wanted.raising.includes(diagnosis.raisingSetpointHelps)) return false;
  return wanted.causes.length === 0 ? causes.length === 0 : causes.some((code) => wanted.causes.includes(code));
}

/** Planted causes as rows, verdicts as columns, and the zones that are wrong under them. */
export function confusionTable(compared: readonly Compared[]): string {
  const plantedOf = ({ planted, missingTrend }: Compared): string =>
    planted + (missingTrend ? ` (no ${missingTrend})` : "");
  const rows = [...new Set(compared.map(plantedOf))].sort();
  const columns = [...new Set(compared.map(({ verdict }) => verdict))].sort();
  const width = Math.max(...rows.map((row) => row.length));
  const line = (first: string, cells: readonly string[]): string =>
    [first.padEnd(width), ...cells.map((cell, k) => cell.padStart((columns[k] ?? "right").length))].join("  ");
  const body = rows.map((row) => {
    const own = compared.filter((each) => plantedOf(each) === row);
    const counts = columns.map((verdict) => String(own.filter((each) => each.verdict === verdict).length || "."));
    return line(row, [...counts, `${own.filter(({ right }) => right).length}/${own.length}`]);
  });
  const wrong = compared
    .filter(({ right }) => !right)
    .map((each) => `  ${each.zoneCode}  ${plantedOf(each)}: ${each.verdict}; ${each.causes.join(" ") || "no cause"}`);
  const right = compared.filter((each) => each.right).length;
  return [
    line("planted", [...columns, "right"]),
    ...body,
    `${right} of ${compared.length} right, ${compared.filter((each) => each.uselessSetpoint).length} useless setpoints proposed`,
    ...wrong,
  ].join("\n");
}
