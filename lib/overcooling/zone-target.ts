import { exact, type Input } from "./calculation/quantity";
import type { Plant } from "./plant";
import type { Row } from "./rows";

const OWN = { symbol: "T_t", unit: "°C", origin: "entered" } as const;

/** The plant with a row's own target zone air temperature, where its zone has one. */
export function withOwnTarget<P extends Plant>(plant: P, row: Row): P {
  const own = row.zone?.targetZoneAirTempC ?? null;
  if (own === null) return plant;
  const targetTemp = exact({
    ...OWN,
    label: `target zone air temperature, zone ${row.code}`,
    value: own,
    source: "zone record",
    href: `/zones/${row.zoneId}`,
  });
  return { ...plant, targetTemp };
}

/** The plant with the mean of all rows' targets by floor area, for methods that treat a building as one zone. */
export function withMeanTarget<P extends Plant>(plant: P, rows: readonly Row[]): P {
  if (rows.every((row) => (row.zone?.targetZoneAirTempC ?? null) === null)) return plant;
  const targetTemp: Input = exact({
    ...OWN,
    label: "target zone air temperature, mean of the zones by floor area",
    value: rows.reduce((sum, row) => sum + row.areaShare * (row.zone?.targetZoneAirTempC ?? plant.targetTemp.value), 0),
    source: "building settings and zone records",
    href: "/zones",
  });
  return { ...plant, targetTemp };
}
