import Link from "next/link";
import { currencySign } from "@/app/_components/quantity/money-figure";
import { DataTable } from "@/app/_components/ui/data-table";
import type { Building } from "@/lib/services/buildings/find";
import { VERDICT_WORDS } from "@/lib/trends/diagnosis/verdict-words";
import { whole, type zoneCostLines } from "../overview-view-model";

type Props = { zones: ReturnType<typeof zoneCostLines>; building: Building; buildingPath: string };

/** Zones by what they cost, with what is known of each. Their workings are pages of their own: a campus has thousands. */
export function ZoneCostTable({ zones, building, buildingPath }: Props) {
  const unit = currencySign(building.currency).trim();
  return (
    <DataTable
      caption="Cost of overcooling by zone, a year, dearest first."
      rows={zones.lines}
      rowKey={(line) => line.key}
      columns={[
        {
          key: "zone",
          head: "Zone",
          names: true,
          total: "Together",
          cell: (line) =>
            line.zoneId === null ? line.code : <Link href={`${buildingPath}/zones/${line.zoneId}`}>{line.code}</Link>,
        },
        {
          key: "share",
          head: "Of the most likely",
          unit,
          align: "number",
          cell: (line) => whole(line.contribution),
          total: whole(zones.p50),
        },
        { key: "p10", head: "P10", unit, align: "number", cell: (line) => whole(line.p10) },
        { key: "p90", head: "P90", unit, align: "number", cell: (line) => whole(line.p90) },
        {
          key: "mean",
          head: "Occupied mean",
          unit: building.temperatureUnit === "F" ? "°F" : "°C",
          align: "number",
          cell: (line) => line.mean,
        },
        { key: "below", head: "Below target", unit: "% of hours", align: "number", cell: (line) => line.belowPct },
        { key: "heaters", head: "Heaters", align: "number", cell: (line) => line.heaters },
        { key: "cold", head: "Cold reports", align: "number", cell: (line) => line.coldReports },
        { key: "verdict", head: "Verdict", cell: (line) => (line.verdict ? VERDICT_WORDS[line.verdict] : "no trends") },
        {
          key: "working",
          head: "Worked out",
          cell: (line) =>
            line.working.terms.length > 0 ? (
              <Link href={`${buildingPath}/working/zone-${line.key}`} prefetch={false}>
                Working<span className="visually-hidden"> of zone {line.code}</span>
              </Link>
            ) : null,
        },
      ]}
    />
  );
}
