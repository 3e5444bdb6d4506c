import { SettingsComparison } from "@/app/_components/charts/settings-comparison";
import { StackedContribution } from "@/app/_components/charts/stacked-contribution";
import { WeekHourHeatMap } from "@/app/_components/charts/week-hour-heat-map";
import { ZoneTimeChart } from "@/app/_components/charts/zone-time-chart";
import { formatFigure } from "@/app/_components/quantity/format-figure";
import { MoneyFigure, MoneyRange } from "@/app/_components/quantity/money-figure";
import { NoFigure, Quantity } from "@/app/_components/quantity/quantity";
import { Range } from "@/app/_components/quantity/range";
import { RangeBar } from "@/app/_components/quantity/range-bar";
import { TierBadge } from "@/app/_components/quantity/tier-badge";
import { WorkingDisclosure } from "@/app/_components/quantity/working-disclosure";
import { WorkingSheet } from "@/app/_components/quantity/working-sheet";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { PageShell } from "@/app/_components/shell/page-shell";
import { Remark } from "@/app/_components/shell/remark";
import { Section } from "@/app/_components/shell/section";
import { Button, LinkButton } from "@/app/_components/ui/button";
import { CheckboxField, RadioField } from "@/app/_components/ui/choice-field";
import { DataTable } from "@/app/_components/ui/data-table";
import { DefinitionList } from "@/app/_components/ui/definition-list";
import { Disclosure } from "@/app/_components/ui/disclosure";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import { FindingsList } from "@/app/_components/ui/findings-list";
import { FormMessage } from "@/app/_components/ui/form-message";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { Notice } from "@/app/_components/ui/notice";
import { NumberField } from "@/app/_components/ui/number-field";
import { SelectField } from "@/app/_components/ui/select-field";
import { SubmitButton } from "@/app/_components/ui/submit-button";
import { Tag } from "@/app/_components/ui/tag";
import { TextAreaField } from "@/app/_components/ui/text-area-field";
import type { Working } from "@/lib/working/working";

const inner: Working = {
  formula: "Q_oc = ρ * c_p * V_dot * ΔT_h / 1000",
  terms: [
    {
      symbol: "ρ",
      label: "density of air",
      value: 1.2,
      unit: "kg/m³",
      origin: "default",
      source: "ASHRAE Handbook, Fundamentals 2021, ch. 1",
      low: 1.15,
      high: 1.22,
      assumptionId: "air-density",
    },
    { symbol: "c_p", label: "specific heat of air", value: 1006, unit: "J/(kg K)", origin: "default" },
    {
      symbol: "V_dot",
      label: "mean airflow",
      value: 0.214,
      unit: "m³/s",
      origin: "measured",
      href: "/zones/3/trends",
      source: "airflow trend, Jul 2026",
    },
    { symbol: "ΔT_h", label: "degree-hours below target", value: 1612, unit: "K·h", origin: "computed" },
  ],
  result: { symbol: "Q_oc", label: "cooling delivered beyond the target", value: 416.5, unit: "kWh" },
  notes: ["Hours in deadband are left out: no cooling is delivered in them."],
};
const working: Working = {
  formula: "C = Q_oc / COP * r + E_h * r",
  terms: [
    {
      symbol: "Q_oc",
      label: "cooling delivered beyond the target",
      value: 416.5,
      unit: "kWh",
      origin: "computed",
      working: inner,
      low: 352,
      high: 488,
    },
    {
      symbol: "COP",
      label: "plant coefficient of performance",
      value: 3.1,
      unit: "",
      origin: "entered",
      low: 2.6,
      high: 3.6,
      source: "plant log, chiller 1",
    },
    {
      symbol: "E_h",
      label: "electricity of heaters",
      value: 1890,
      unit: "kWh",
      origin: "measured",
      href: "/devices",
      source: "6 devices, 14 readings",
    },
    {
      symbol: "r",
      label: "electricity rate",
      value: 0.182,
      unit: "$/kWh",
      origin: "entered",
      source: "tariff, energy charge",
    },
  ],
  result: { symbol: "C", label: "cost of overcooling in zone 3", value: 368.4, unit: "$ a year" },
  source: "Definition of this ledger",
};
const zones = [
  { id: 1, name: "3 East open plan", hours: 812, kh: 1612.4, heaters: 6, cost: 36840 },
  { id: 2, name: "3 West open plan", hours: 604, kh: 803.1, heaters: 3, cost: 19200 },
  { id: 3, name: "4 North meeting rooms", hours: 92, kh: 41.0, heaters: 0, cost: 1100 },
];
const from = Date.UTC(2026, 6, 13, 4) / 1000;
const to = from + 3 * 86400;
const air = Array.from({ length: 288 }, (_, i) => ({
  t: from + i * 900,
  v: 22 + 1.6 * Math.sin((i - 60) / 15.3) - (i > 100 && i < 140 ? 1.3 : 0) + 0.1 * Math.sin(i * 1.7),
})).filter((p, i) => i < 180 || i > 200);
const occupied = (i: number) => i % 96 >= 28 && i % 96 < 72;
const steps = (a: number, b: number) =>
  Array.from({ length: 288 }, (_, i) => ({ t: from + i * 900, v: occupied(i) ? a : b }));
const states = [0, 1, 2].flatMap((d) => [
  { from: from + d * 86400 + 7 * 3600, to: from + d * 86400 + 10 * 3600, state: "cooling" as const },
  { from: from + d * 86400 + 10 * 3600, to: from + d * 86400 + 13 * 3600, state: "deadband" as const },
  { from: from + d * 86400 + 13 * 3600, to: from + d * 86400 + 15 * 3600, state: "reheat" as const },
  { from: from + d * 86400 + 15 * 3600, to: from + d * 86400 + 16 * 3600, state: "fault" as const },
  { from: from + d * 86400 + 16 * 3600, to: from + d * 86400 + 18 * 3600, state: "undetermined" as const },
]);
const heat = Array.from({ length: 7 }, (_, d) =>
  Array.from({ length: 24 }, (_, h) =>
    d > 4 && h < 6 ? null : (d < 5 && h > 6 && h < 19 ? -2.4 : 0.6) + 1.6 * Math.sin((h + d) / 3),
  ),
);

export default function Preview() {
  const path = "/buildings/1";
  return (
    <PageShell
      building={{ id: 1, name: "Harbour Street 12" }}
      userName="R. Example"
      signOut={<a href="/out">Sign out</a>}
    >
      <PageHeading
        title="Overcooling in Harbour Street 12"
        figure={
          <WorkingDisclosure working={working} buildingPath={path}>
            <MoneyRange minorUnits={{ p10: 451200, p50: 521900, p90: 598700 }} currency="USD" per="a year" headline />
          </WorkingDisclosure>
        }
        lede="Three zones are kept below their target of 23.0 °C through most of the cooling season; nine heaters run under their desks to make up for it."
        remarks={
          <>
            <Remark title="Basis">
              80 % range over 2,000 draws of the inputs. <TierBadge tier={2} basis="measured zones, modelled plant" />
            </Remark>
            <Remark title="Record">1 May to 30 September 2026, 98.2 % of occupied hours.</Remark>
          </>
        }
      />
      <Section
        id="range"
        title="What it costs"
        remarks={
          <Remark title="Largest part">Cooling delivered beyond the target, then the heaters against it.</Remark>
        }
      >
        <RangeBar
          label="Cost of overcooling"
          range={{ p10: 4512, p50: 5219, p90: 5987 }}
          unit=""
          per="a year"
          prefix="$"
          scale={{ min: 0, max: 10000 }}
        />
        <StackedContribution
          label="Cost of overcooling"
          unit="a year"
          format={(v) => "$" + formatFigure(v, { decimals: 0 })}
          parts={[
            { label: "Cooling beyond target", value: 2410 },
            { label: "Fans", value: 480 },
            { label: "Reheat", value: 1350 },
            { label: "Heaters at desks", value: 760 },
            { label: "Demand charge", value: 219 },
          ]}
        />
      </Section>
      <Section id="zones" title="Zones" action={<LinkButton href="#x">Add a zone</LinkButton>} wide>
        <DataTable
          caption="Occupied hours of the cooling season, 2026"
          columns={[
            { key: "name", head: "Zone", names: true, cell: (z) => <a href="#z">{z.name}</a>, total: "Building" },
            {
              key: "hours",
              head: "Below target",
              unit: "h",
              align: "number",
              cell: (z) => formatFigure(z.hours, { decimals: 0 }),
              total: "1,508",
            },
            {
              key: "kh",
              head: "Overcooling",
              unit: "K·h",
              align: "number",
              cell: (z) => formatFigure(z.kh, { decimals: 1 }),
              total: "2,456.5",
            },
            { key: "heaters", head: "Heaters", align: "number", cell: (z) => z.heaters, total: 9 },
            {
              key: "cost",
              head: "Cost, P10 to P90",
              unit: "$ a year",
              cell: (z) => (
                <RangeBar
                  bare
                  label={z.name}
                  range={{ p10: z.cost * 0.08, p50: z.cost * 0.1, p90: z.cost * 0.13 }}
                  unit=""
                  scale={{ min: 0, max: 5000 }}
                />
              ),
            },
            {
              key: "money",
              head: "Most likely",
              align: "number",
              cell: (z) => <MoneyFigure money={{ minorUnits: z.cost * 10, currency: "USD" }} whole />,
              total: "$5,714",
            },
            { key: "tier", head: "Basis", cell: () => <Tag>measured</Tag> },
          ]}
          rows={zones}
          rowKey={(z) => z.id}
          detail={(z) => ({ summary: "Working", content: <WorkingSheet working={working} buildingPath={path} /> })}
        />
      </Section>
      <Section id="chart" title="Where is 3 East cold" wide remarks={<Remark>Samples every 15 minutes.</Remark>}>
        <ZoneTimeChart
          label="Zone air, setpoints and states of 3 East, 13 to 15 July 2026"
          series={{
            timeZone: "America/New_York",
            from,
            to,
            zoneAir: air,
            coolingSetpoint: steps(21.5, 26),
            heatingSetpoint: steps(20.5, 17),
            comfortBand: [
              { t: from, low: 22.5, high: 25 },
              { t: to, low: 22.5, high: 25 },
            ],
            states,
            reports: [
              { t: from + 9 * 3600, vote: -2 },
              { t: from + 9.7 * 3600, vote: -3 },
              { t: from + 40 * 3600, vote: 1 },
              { t: from + 60 * 3600, vote: 0 },
            ],
            heaters: [{ t: from + 8 * 3600 }, { t: from + 9 * 3600 }, { t: from + 33 * 3600 }],
          }}
        >
          <DataTable
            caption="Zone air"
            columns={[
              {
                key: "t",
                head: "Time",
                names: true,
                cell: (p: { t: number; v: number }) => new Date(p.t * 1000).toISOString(),
              },
              { key: "v", head: "Zone air", unit: "°C", align: "number", cell: (p) => p.v.toFixed(1) },
            ]}
            rows={air.slice(0, 4)}
            rowKey={(p) => p.t}
          />
        </ZoneTimeChart>
      </Section>
      <Section
        id="heat"
        title="When in the week"
        remarks={<Remark title="Read">Blue is colder than the target; a line means no data.</Remark>}
      >
        <WeekHourHeatMap
          label="Mean zone air against target by hour of the week, 3 East"
          differencesK={heat}
          reference="the target of 23.0 °C"
        />
      </Section>
      <Section id="findings" title="Findings" remarks={<Remark>Sorted by gravity.</Remark>}>
        <FindingsList
          label="Findings"
          findings={[
            { key: "a", severity: "note", sentence: "14 hours were repeated when clocks went back on 1 November." },
            {
              key: "b",
              severity: "caution",
              sentence: "The airflow trend of 3 West stands still for 31 hours from 4 July, 22:15.",
              action: "Check the sensor.",
            },
            {
              key: "c",
              severity: "disqualifies",
              sentence: "4 North has no reheat valve trend, so its state is undetermined for 41 % of hours.",
              action: "Add the valve trend.",
            },
          ]}
        />
        <Notice kind="done" title="12 devices registered" action={<Button>Undo</Button>}>
          Three of them still need a reading.
        </Notice>
        <Notice kind="danger" title="Take device 7 out of use">
          <p>Its cord was found hot at 61 °C.</p>
        </Notice>
        <p>
          <Quantity value={1234.56} unit="kWh" /> · <Range range={{ p10: -0.4, p50: 0.3, p90: 1.1 }} unit="K" /> ·{" "}
          <NoFigure reason="undetermined: no valve trend" /> · <Tag kind="danger">out of use</Tag>{" "}
          <Tag kind="strong">measured</Tag>
        </p>
        <EmptyState
          action={
            <LinkButton kind="primary" href="#i">
              Import a trend log
            </LinkButton>
          }
        >
          Trend logs of the zones belong here.
        </EmptyState>
        <DefinitionList
          items={[
            { term: "Floor area", value: <Quantity value={412} unit="m²" /> },
            { term: "Served by", value: "AHU-2", note: "from the zone list" },
          ]}
        />
        <Disclosure summary="How hours are counted">By the building's wall clock.</Disclosure>
      </Section>
      <Section id="device" title="Settings of device 7" remarks={<Remark>Bars end at the highest reading.</Remark>}>
        <SettingsComparison
          label="Settings of device 7"
          settings={[
            { key: "l", label: "Low", powerW: 612, lowW: 598, highW: 626 },
            { key: "h", label: "High", powerW: 1391, lowW: 1370, highW: 1412, note: "as found", current: true },
            { key: "f", label: "Fan only", powerW: 18 },
          ]}
        />
      </Section>
      <Section
        id="form"
        title="Register a device"
        remarks={<Remark>Numbers may be written with a comma or a point.</Remark>}
      >
        <FormStack>
          <FormMessage fieldErrors={{ powerW: "Measured power must be at least 1 W." }} />
          <Field name="tag" label="Tag number" hint="On the sticker, for example H-07." />
          <NumberField
            name="powerW"
            label="Measured power"
            unit="W"
            error="Measured power must be at least 1 W."
            defaultValue="0"
          />
          <SelectField name="zone" label="Zone" prompt="Choose a zone" options={[{ value: "1", label: "3 East" }]} />
          <FieldSet legend="As found" hint="At the time of the walk." id="asFound">
            <RadioField id="on" name="found" value="on" label="Running" />
            <RadioField id="off" name="found" value="off" label="Off, warm to the touch" />
          </FieldSet>
          <CheckboxField
            name="cord"
            label="Plugged into an extension cord"
            hint="Say so even when the cord looks sound."
          />
          <TextAreaField name="note" label="Remark" optional />
          <FormActions>
            <SubmitButton>Save and next desk</SubmitButton>
            <Button kind="danger">Take out of use</Button>
          </FormActions>
        </FormStack>
      </Section>
    </PageShell>
  );
}
