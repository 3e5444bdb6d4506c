import type { Finding } from "@/lib/findings/finding";
import type { AnnualExposure, ZoneExposure } from "@/lib/trends/zone-exposure";
import type { AssessedDevice, AssessedZone, AssessmentInput } from "./assessment-input";
import { recordFault } from "./record-fault";

/** A line of the result: a zone, or the floor area that no zone covers. */
export type Row = {
  zoneId: number | null;
  code: string;
  floorAreaM2: number;
  areaOrigin: "entered" | "computed";
  /** The zone's share of the area of all rows. */
  areaShare: number;
  zone: AssessedZone | null;
  /** Space heaters whose energy can be believed. Personal fans are no cost of overcooling. */
  heaters: readonly AssessedDevice[];
  coldReportsPerYear: number;
  /** The zone's record, where it has one that can be used. */
  record: { annual: AnnualExposure; exposure: ZoneExposure | null } | null;
};

/**
 * Zones as rows. Zones without an area of their own share what is left of the floor area equally; area that is left
 * over when all zones have one becomes a row without a zone. Devices and records that cannot be true are left out,
 * each with a finding.
 */
export function assessmentRows(input: AssessmentInput): { rows: Row[]; findings: Finding[] } {
  const findings: Finding[] = [];
  const unsized = input.zones.filter((each) => each.floorAreaM2 === null);
  const sizedM2 = input.zones.reduce((sum, each) => sum + (each.floorAreaM2 ?? 0), 0);
  const leftM2 = Math.max(0, input.floorAreaM2 - sizedM2);
  if (sizedM2 > input.floorAreaM2 * 1.001) {
    findings.push({
      code: "zone-areas-exceed-floor-area",
      severity: "caution",
      evidence: { zonesM2: sizedM2, floorAreaM2: input.floorAreaM2, zonesWithoutArea: unsized.length },
    });
  }
  if (unsized.length > 0) {
    findings.push({
      code: "zone-area-shared",
      severity: "note",
      evidence: { zones: unsized.map((each) => each.code), eachM2: leftM2 / unsized.length },
    });
  }
  const fans = input.zones.reduce((sum, each) => sum + fansOf(each), 0);
  if (fans > 0) {
    const zones = input.zones.filter((each) => fansOf(each) > 0).length;
    findings.push({ code: "fans-not-counted", severity: "note", evidence: { zones, fans } });
  }
  const rows: Row[] = input.zones.map((zone) => ({
    zoneId: zone.zoneId,
    code: zone.code,
    floorAreaM2: zone.floorAreaM2 ?? leftM2 / unsized.length,
    areaOrigin: zone.floorAreaM2 === null ? "computed" : "entered",
    areaShare: 0,
    zone,
    heaters: believableHeaters(zone, findings),
    coldReportsPerYear: zone.coldReportsPerYear,
    record: usableRecord(zone, input, findings),
  }));
  if (unsized.length === 0 && leftM2 > 0.001 * input.floorAreaM2) {
    rows.push({
      zoneId: null,
      code: input.zones.length === 0 ? "whole building" : "rest of the building",
      floorAreaM2: leftM2,
      areaOrigin: "computed",
      areaShare: 0,
      zone: null,
      heaters: [],
      coldReportsPerYear: 0,
      record: null,
    });
  }
  const totalM2 = rows.reduce((sum, each) => sum + each.floorAreaM2, 0);
  for (const row of rows) row.areaShare = totalM2 > 0 ? row.floorAreaM2 / totalM2 : 0;
  return { rows, findings };
}

const fansOf = (zone: AssessedZone): number => zone.devices.filter((each) => each.kind === "personal-fan").length;

function believableHeaters(zone: AssessedZone, findings: Finding[]): AssessedDevice[] {
  return zone.devices.filter((device) => {
    if (device.kind !== "space-heater") return false;
    if (device.settingsWithoutPower.length > 0) {
      findings.push({
        code: "heater-power-unknown",
        severity: "caution",
        evidence: { device: device.label, zone: zone.code, settings: device.settingsWithoutPower },
      });
    }
    const { value, low, high } = device.energyKwhPerYear;
    const mostKwh = 8.784 * device.highPowerW;
    if (low >= 0 && low <= value && value <= high && value <= mostKwh) return true;
    findings.push({
      code: "heater-energy-impossible",
      severity: "caution",
      evidence: { device: device.label, zone: zone.code, energyKwh: value, mostKwh, lowKwh: low, highKwh: high },
    });
    return false;
  });
}

function usableRecord(zone: AssessedZone, input: AssessmentInput, findings: Finding[]): Row["record"] {
  if (!zone.annual) return null;
  const fault = recordFault(zone.annual, zone.exposure, zone.targetZoneAirTempC ?? input.targetZoneAirTempC);
  if (fault === null) return { annual: zone.annual, exposure: zone.exposure };
  findings.push({ ...fault, evidence: { zone: zone.code, ...fault.evidence } });
  return null;
}
