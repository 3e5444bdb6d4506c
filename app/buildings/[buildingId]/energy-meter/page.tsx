import type { Metadata } from "next";
import Link from "next/link";
import { EnergyScatter } from "@/app/_components/charts/energy-scatter";
import { MoneyRange } from "@/app/_components/quantity/money-figure";
import { TierBadge } from "@/app/_components/quantity/tier-badge";
import { WorkingDisclosure } from "@/app/_components/quantity/working-disclosure";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Remark } from "@/app/_components/shell/remark";
import { Section } from "@/app/_components/shell/section";
import { StandingNote } from "@/app/_components/standing/standing-note";
import { LinkButton } from "@/app/_components/ui/button";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { FindingsList } from "@/app/_components/ui/findings-list";
import { readAs } from "@/app/_server/read";
import { currencyDecimals } from "@/lib/money/money";
import { readBills } from "@/lib/services/bills/bills";
import { readBuilding } from "@/lib/services/buildings/find";
import { METER, readShownMeter } from "@/lib/services/meter/read";
import { standingNote } from "../standing-note";
import { BillTable } from "./_components/bill-table";
import { KelvinWorthList } from "./_components/kelvin-worth";
import { CandidateTable, ModelTable, ReadingTable } from "./_components/model-tables";
import {
  billLines,
  candidateLines,
  energyGroups,
  meterFindingLines,
  meterLede,
  modelLines,
  readingLines,
  scatterLabel,
} from "./view-model";

export const metadata: Metadata = { title: "Energy meter" };

type Props = {
  params: Promise<{ buildingId: string }>;
  searchParams: Promise<Record<string, string | undefined>>;
};

export default async function EnergyMeterPage({ params, searchParams }: Props) {
  const id = Number((await params).buildingId);
  const { meter: key } = await searchParams;
  const path = `/buildings/${id}`;
  const { building, energyMeter, note, bills } = await readAs(async (ctx) => {
    const building = readBuilding(ctx, id);
    const { energyMeter, meter, kept } = await readShownMeter(ctx, id, key);
    const note = meter && kept && standingNote(ctx, building, { [`${METER.name}/${meter.key}`]: kept });
    return { building, energyMeter, note, bills: meter?.key === "bills" ? readBills(ctx, id) : [] };
  }, `${path}/energy-meter`);
  const { meters, shown } = energyMeter;
  if (!shown && note) {
    return (
      <>
        <PageHeading title="Energy meter" />
        <StandingNote note={note} />
      </>
    );
  }
  const lede = meterLede(energyMeter);
  if (!shown) {
    return (
      <>
        <PageHeading title="Energy meter" lede={lede} />
        <Section plain>
          <EmptyState action={<LinkButton href={`${path}/imports`}>Bring in a meter or bills</LinkButton>}>
            An export of the meter (every 15 minutes, hour or day) is brought in as a trend log and mapped as an
            electricity meter; bills are a table of their own.
          </EmptyState>
        </Section>
      </>
    );
  }
  const { model, worth, findings } = shown;
  const minor = 10 ** currencyDecimals(building.currency);
  const unit = building.temperatureUnit;
  const others = meters.filter((each) => each.key !== shown.key);
  return (
    <>
      <StandingNote note={note} />
      <PageHeading
        title="Energy meter"
        lede={lede}
        figure={
          worth ? (
            <WorkingDisclosure working={worth.money.working} buildingPath={path}>
              <MoneyRange
                minorUnits={{
                  p10: worth.money.range.p10 * minor,
                  p50: worth.money.range.p50 * minor,
                  p90: worth.money.range.p90 * minor,
                }}
                currency={building.currency}
                per="a year for each kelvin"
                headline
              />{" "}
              <TierBadge tier={3} basis="calibrated to meter" />
            </WorkingDisclosure>
          ) : undefined
        }
        remarks={
          others.length > 0 ? (
            <Remark title="Other meters">
              {others.map((each, i) => (
                <span key={each.key}>
                  {i > 0 ? ", " : ""}
                  <Link href={`${path}/energy-meter?meter=${each.key}`}>{each.name}</Link>
                </span>
              ))}
            </Remark>
          ) : undefined
        }
      />
      <Section id="findings" title={worth ? "What to know about it" : "Why there is no figure"} plain>
        <FindingsList
          label="Findings about the meter"
          findings={meterFindingLines(findings, building)}
          none="Nothing to remark."
        />
      </Section>
      {model && model.types.length > 0 ? (
        <>
          <Section id="readings" title="Energy against outdoor air temperature" wide>
            <EnergyScatter label={scatterLabel(shown)} groups={energyGroups(model)} temperatureUnit={unit}>
              <ReadingTable lines={readingLines(model, building)} unit={unit} />
            </EnergyScatter>
          </Section>
          {worth ? (
            <Section id="worth" title="What one kelvin of cooling setpoint is worth" plain>
              <KelvinWorthList worth={worth} buildingPath={path} />
            </Section>
          ) : null}
          <Section id="models" title="Models" wide>
            <ModelTable lines={modelLines(model, building)} unit={unit} />
          </Section>
          <Section id="candidates" title="Models tried" wide>
            <CandidateTable lines={candidateLines(model, building)} />
          </Section>
        </>
      ) : null}
      {bills.length > 0 ? (
        <Section id="bills" title="Bills" wide>
          <BillTable lines={billLines(bills)} currency={building.currency} buildingId={id} />
        </Section>
      ) : null}
    </>
  );
}
