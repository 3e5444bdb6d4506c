import type { Metadata } from "next";
import Link from "next/link";
import { currencySign } from "@/app/_components/quantity/money-figure";
import { WorkingSheet } from "@/app/_components/quantity/working-sheet";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { StandingNote } from "@/app/_components/standing/standing-note";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { TEMPERATURE_GUIDANCE } from "@/lib/comfort-reports/temperature-guidance";
import { readBuilding } from "@/lib/services/buildings/find";
import { readKept } from "@/lib/services/kept/read-kept";
import { TARGET_CURVE } from "@/lib/services/overcooling/shown";
import { formatTemperature } from "@/lib/units/format";
import { whole } from "../overview-view-model";
import { standingNote } from "../standing-note";
import { TargetCurveFigure } from "./_components/target-curve-figure";
import { curvePicture, guidanceWords, type Point, percent, targetLede } from "./view-model";

export const metadata: Metadata = { title: "Target" };

type Props = { params: Promise<{ buildingId: string }> };

/** What the cost would be against other targets, with what people say of those temperatures. */
export default async function TargetPage({ params }: Props) {
  const id = Number((await params).buildingId);
  const path = `/buildings/${id}`;
  const { building, curve, note } = await readAs(async (ctx) => {
    const building = readBuilding(ctx, id);
    const kept = await readKept(ctx, id, TARGET_CURVE);
    return { building, curve: kept.result, note: standingNote(ctx, building, { [TARGET_CURVE.name]: kept }) };
  }, `${path}/target`);
  const sign = currencySign(building.currency);
  const degrees = building.temperatureUnit === "F" ? "°F" : "°C";
  const temp = (point: Point) => formatTemperature(point.targetC, building.temperatureUnit).value;
  return (
    <>
      <PageHeading title="Cost against the target" lede={targetLede(building)} />
      <StandingNote note={note} />
      {!curve ? null : curve.points.length === 0 ? (
        <EmptyState>There is no figure for any target yet. The overview says what is missing.</EmptyState>
      ) : (
        <Section id="curve" title="Cost and field votes by target" wide>
          <TargetCurveFigure
            label={`Cost of overcooling a year by target, and shares of people who would want it warmer and cooler: ${curve.points
              .map(
                (each) =>
                  `${temp(each)} ${degrees} ${sign}${whole(each.p50)}, ${percent(each.votes.warmer)} % warmer, ${percent(each.votes.cooler)} % cooler`,
              )
              .join("; ")}`}
            picture={curvePicture(curve.points, building, (value) => sign + whole(value))}
          />
          <DataTable
            caption={`Cost of overcooling a year by target zone air temperature, in ${curve.draws.toLocaleString("en")} draws that all targets share`}
            rows={curve.points}
            rowKey={(point) => point.targetC}
            columns={[
              {
                key: "target",
                head: "Target",
                unit: degrees,
                names: true,
                cell: (point) =>
                  point.targetC === building.targetZoneAirTempC ? `${temp(point)}, this building's` : temp(point),
              },
              { key: "p10", head: "P10", unit: sign, align: "number", cell: (point) => whole(point.p10) },
              { key: "p50", head: "Most likely", unit: sign, align: "number", cell: (point) => whole(point.p50) },
              { key: "p90", head: "P90", unit: sign, align: "number", cell: (point) => whole(point.p90) },
              {
                key: "warmer",
                head: "Want it warmer",
                unit: "%",
                align: "number",
                cell: (point) => percent(point.votes.warmer),
              },
              {
                key: "cooler",
                head: "Want it cooler",
                unit: "%",
                align: "number",
                cell: (point) => percent(point.votes.cooler),
              },
            ]}
            detail={(point) => ({
              summary: "Working",
              content: <WorkingSheet working={point.working} buildingPath={path} />,
            })}
          />
          <p>
            Votes: {curve.votesSource}. People dress for the building they have, so the shares are a guide and no
            forecast: watch hot and cold reports after every change. Zones with a target of their own keep it here, and
            cold reports are those counted against the present target.{" "}
            <Link href={`${path}/settings#targetZoneAirTempC`}>Change the target</Link>.
          </p>
        </Section>
      )}
      <Section id="guidance" title="What is published of office temperatures" wide>
        <DataTable
          caption="For comparison: nothing here limits a target, and the local rule as it stands prevails"
          rows={TEMPERATURE_GUIDANCE}
          rowKey={({ id: key }) => key}
          columns={[
            { key: "place", head: "Place", names: true, cell: (row) => row.place },
            { key: "says", head: "Says", cell: (row) => guidanceWords(row, building.temperatureUnit) },
            { key: "force", head: "Force", cell: (row) => row.force },
            { key: "source", head: "Source", cell: (row) => row.source },
          ]}
        />
      </Section>
    </>
  );
}
