import type { Metadata } from "next";
import Link from "next/link";
import { StackedContribution } from "@/app/_components/charts/stacked-contribution";
import { currencySign, MoneyRange } from "@/app/_components/quantity/money-figure";
import { RangeBar } from "@/app/_components/quantity/range-bar";
import { TierBadge } from "@/app/_components/quantity/tier-badge";
import { WorkingDisclosure } from "@/app/_components/quantity/working-disclosure";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { StandingNote } from "@/app/_components/standing/standing-note";
import { LinkButton } from "@/app/_components/ui/button";
import { DefinitionList } from "@/app/_components/ui/definition-list";
import { Disclosure } from "@/app/_components/ui/disclosure";
import { FindingsList } from "@/app/_components/ui/findings-list";
import { readAs } from "@/app/_server/read";
import { mergedNote } from "@/lib/comfort-reports/disclosure/disclosure-words";
import { currencyDecimals } from "@/lib/money/money";
import { readBuilding } from "@/lib/services/buildings/find";
import { readKeptAll } from "@/lib/services/kept/read-kept";
import { COST } from "@/lib/services/overcooling/shown";
import { shownZones, ZONES } from "@/lib/services/zones/shown";
import { AssessmentRemarks } from "./_components/assessment-remarks";
import { ComponentTable } from "./_components/component-table";
import { GettingStarted } from "./_components/getting-started";
import { SwingTable } from "./_components/swing-table";
import { ZoneCostTable } from "./_components/zone-cost-table";
import { assessmentFindingLines } from "./assessment-words";
import {
  barParts,
  coldZoneLines,
  componentLines,
  overviewLede,
  summaryItems,
  whole,
  zoneCostLines,
} from "./overview-view-model";
import { standingNote } from "./standing-note";
import { belowTargetPct } from "./zones/view-model";

export const metadata: Metadata = { title: "Overview" };

/** Dearest cold zones named at once; the rest open on demand. */
const COLD_ZONES_SHOWN = 8;

type Props = { params: Promise<{ buildingId: string }> };

export default async function OverviewPage({ params }: Props) {
  const id = Number((await params).buildingId);
  const path = `/buildings/${id}`;
  const { building, cost, overview, note } = await readAs(async (ctx) => {
    const building = readBuilding(ctx, id);
    const [cost, zones] = await readKeptAll(ctx, id, [{ kind: COST }, { kind: ZONES }]);
    const overview = shownZones(ctx, id, zones);
    return { building, cost: cost.result, overview, note: standingNote(ctx, building, { cost, zones }) };
  }, path);
  if (!cost) {
    return (
      <>
        <PageHeading title="What overcooling costs" />
        <StandingNote note={note} />
      </>
    );
  }
  const { assessment } = cost;
  if (assessment.status !== "ok") {
    return (
      <>
        <PageHeading title="What overcooling costs" lede={overviewLede(cost, building)} />
        <StandingNote note={note} />
        <Section id="findings" title="Why there is no figure yet" plain>
          <FindingsList label="Findings" findings={assessmentFindingLines(assessment.findings)} />
        </Section>
        <GettingStarted path={path} zones={overview.zones.length} hasRecord={cost.record !== null} />
      </>
    );
  }
  const minor = 10 ** currencyDecimals(building.currency);
  const { p10, p50, p90 } = assessment.headline;
  const components = componentLines(assessment);
  const zones = zoneCostLines(assessment, overview, building, belowTargetPct);
  const cold = coldZoneLines(overview, zones.lines, building);
  const sign = currencySign(building.currency);
  return (
    <>
      <StandingNote note={note} />
      <PageHeading
        title="What overcooling costs"
        figure={
          <WorkingDisclosure working={assessment.working} buildingPath={path}>
            <MoneyRange
              minorUnits={{ p10: p10 * minor, p50: p50 * minor, p90: p90 * minor }}
              currency={building.currency}
              per="a year"
              headline
            />{" "}
            <TierBadge tier={assessment.tier.number} basis={assessment.tier.label} />
          </WorkingDisclosure>
        }
        lede={overviewLede(cost, building)}
        remarks={<AssessmentRemarks cost={cost} assessed={assessment} building={building} />}
      >
        <RangeBar
          label="Cost of overcooling a year"
          range={assessment.headline}
          unit=""
          per="a year"
          prefix={sign}
          scale={{ min: Math.min(0, p10), max: p90 * 1.15 }}
        />
        <DefinitionList items={summaryItems(overview, building)} />
      </PageHeading>
      {cost.record ? null : <GettingStarted path={path} zones={overview.zones.length} hasRecord={false} />}
      <Section
        id="components"
        title="By component"
        wide
        action={<LinkButton href={`${path}/working`}>The whole working</LinkButton>}
      >
        <StackedContribution
          label="Parts of the most likely cost a year"
          parts={barParts(components.lines)}
          format={(value) => `${sign}${whole(value)}`}
        />
        <ComponentTable components={components} currency={building.currency} buildingPath={path} />
      </Section>
      <Section
        id="cold"
        title="Zones that are too cold, and why"
        wide
        action={<LinkButton href={`${path}/zones`}>All zones</LinkButton>}
      >
        <FindingsList
          label="Cold zones and their causes"
          findings={cold.slice(0, COLD_ZONES_SHOWN)}
          none="No zone stands out as too cold in the trends and reports there are."
        />
        {cold.length > COLD_ZONES_SHOWN ? (
          <Disclosure summary={`${cold.length - COLD_ZONES_SHOWN} more cold zones`}>
            <FindingsList label="More cold zones and their causes" findings={cold.slice(COLD_ZONES_SHOWN)} />
          </Disclosure>
        ) : null}
      </Section>
      <Section id="zones" title="By zone" wide>
        <ZoneCostTable zones={zones} building={building} buildingPath={path} />
        {overview.reports.hidden.size > 0 ? <p>{mergedNote(overview.reports)}</p> : null}
      </Section>
      <Section id="swings" title="What moves the figure most" wide>
        <SwingTable assessed={assessment} currency={building.currency} buildingPath={path} />
      </Section>
      <Section
        id="findings"
        title="What to know about these figures"
        wide
        action={<LinkButton href={`${path}/data-quality`}>Data quality</LinkButton>}
      >
        <FindingsList
          label="Findings about the figures"
          findings={assessmentFindingLines(assessment.findings)}
          none="Nothing to remark."
        />
        <p>
          Every input that is not your own stands on the <Link href={`${path}/assumptions`}>assumptions page</Link>,
          with its range and source.
        </p>
      </Section>
    </>
  );
}
