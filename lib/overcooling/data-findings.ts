import type { Finding } from "@/lib/findings/finding";
import type { Tier } from "./assessment";
import type { AssessmentInput } from "./assessment-input";
import type { Row } from "./rows";
import { isServedByOwnUnit } from "./tiers/measured-zone";

/** Undetermined share of the measured zones' hours above which the split by assumption matters. Judgement, no source. */
const MUCH_UNDETERMINED = 0.25;

/** What is missing for a better figure, and what the figure leaves out. */
export function dataFindings(input: AssessmentInput, rows: readonly Row[], tier: Tier): Finding[] {
  const findings: Finding[] = [];
  const note = (code: string, evidence: Finding["evidence"] = {}, severity: Finding["severity"] = "note"): void => {
    findings.push({ code, severity, evidence });
  };
  if (!input.weather) note("weather-missing", {}, "caution");
  if (input.presentCoolingSetpointC === null && tier < 2) note("setpoint-missing", {}, "caution");
  if (tier === 0 && input.presentCoolingSetpointC === null) note("only-heaters-and-reports", {}, "caution");
  const { kind, demandPricePerKw } = input.electricity;
  if (kind === "blended") {
    note("demand-inside-blended-price", { demandPriceIgnored: demandPricePerKw !== null });
  } else if (demandPricePerKw === null) {
    note("demand-price-missing");
  }
  if (input.heatingFuel !== "electricity" && input.heatPricePerKwh === null) note("heat-price-missing", {}, "caution");
  const reports = rows.reduce((sum, each) => sum + each.coldReportsPerYear, 0);
  if (reports > 0 && !input.complaint) note("complaint-price-missing", { reports });
  if (input.proofsOnSameDays.length > 0)
    note("proofs-on-same-days", { proposals: [...input.proofsOnSameDays] }, "caution");
  if (input.meter?.status === "unused") note("meter-unused", { meters: [...input.meter.meters] });
  if (tier >= 2 && rows.some((each) => each.record)) findings.push(...recordFindings(rows));
  return findings;
}

function recordFindings(rows: readonly Row[]): Finding[] {
  const findings: Finding[] = [];
  const without = rows.filter((each) => !each.record);
  if (without.length > 0) {
    findings.push({
      code: "zones-without-record",
      severity: "caution",
      evidence: {
        zones: without.map((each) => each.code),
        ofZones: rows.length,
        areaPct: 100 * without.reduce((sum, each) => sum + each.areaShare, 0),
      },
    });
  }
  const faulty = { hours: 0, overcoolingKh: 0, zones: [] as string[] };
  const idle = { hours: 0, overcoolingKh: 0, zones: [] as string[] };
  const untold = { hours: 0, seasonHours: 0, zones: [] as string[] };
  for (const { record, code } of rows) {
    if (!record) continue;
    const { deadband, fault, undetermined } = record.annual.byState;
    if (isServedByOwnUnit(record) && deadband.overcoolingKh > 0) {
      idle.hours += deadband.hours;
      idle.overcoolingKh += deadband.overcoolingKh;
      idle.zones.push(code);
    }
    if (fault.hours > 0) {
      faulty.hours += fault.hours;
      faulty.overcoolingKh += fault.overcoolingKh;
      faulty.zones.push(code);
    }
    untold.seasonHours += record.annual.coolingSeasonHours;
    if (undetermined.hours > 0) {
      untold.hours += undetermined.hours;
      untold.zones.push(code);
    }
  }
  if (untold.zones.length > 0) {
    const share = untold.hours / untold.seasonHours;
    findings.push({
      code: "undetermined-hours-split",
      severity: share > MUCH_UNDETERMINED ? "caution" : "note",
      evidence: { zones: untold.zones, hours: untold.hours, sharePct: 100 * share },
    });
  }
  if (faulty.zones.length > 0) {
    findings.push({ code: "fault-hours-not-priced", severity: "note", evidence: { ...faulty } });
  }
  if (idle.zones.length > 0) findings.push({ code: "idle-hours-not-priced", severity: "note", evidence: { ...idle } });
  return findings;
}
