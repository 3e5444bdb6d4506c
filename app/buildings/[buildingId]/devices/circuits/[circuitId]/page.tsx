import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { Button } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { FindingsList } from "@/app/_components/ui/findings-list";
import { readAs } from "@/app/_server/read";
import { RULE_SETS, ruleSetLabel } from "@/lib/electrical/circuit/rule-sets";
import { circuitName, readCircuit } from "@/lib/services/circuits/read";
import { formatNumber } from "@/lib/units/format";
import { CircuitForm } from "../_components/circuit-form";
import { CircuitBar } from "../_components/circuit-picture";
import { HookUpByLabelForm } from "../_components/hook-up-by-label-form";
import { RuleList } from "../_components/rule-list";
import { hookUpByLabelAction, removeCircuitAction, reviseCircuitAction } from "../actions";
import styles from "../circuits.module.css";
import { formFromCircuit } from "../form";
import {
  findingsOf,
  loadBasisLabel,
  mappingLabel,
  outletLabel,
  pictureOf,
  reliefSentences,
  verdictSentence,
} from "../view-model";

export const metadata: Metadata = { title: "Circuit" };

type Props = {
  params: Promise<{ buildingId: string; circuitId: string }>;
  searchParams: Promise<{ without?: string | string[] }>;
};

export default async function CircuitPage({ params, searchParams }: Props) {
  const { buildingId, circuitId } = await params;
  const leaving = [(await searchParams).without ?? []].flat().map(Number);
  const id = Number(buildingId);
  const path = `/buildings/${id}/devices`;
  const here = `${path}/circuits/${circuitId}`;
  const view = await readAs((ctx) => readCircuit(ctx, id, Number(circuitId), leaving), here);
  const { circuit, devices, assessment, without } = view;
  const name = circuitName(circuit);
  const rules = RULE_SETS[circuit.ruleSet];
  const relief = reliefSentences(view);
  return (
    <>
      <PageHeading title={`Circuit ${name}`} lede={verdictSentence(assessment, circuit.breakerRatingA)}>
        <CircuitBar picture={pictureOf(view)} label={`Amperes on circuit ${name}`} />
      </PageHeading>
      <Section id="loads" title="What hangs on it" wide remarks={<RuleList rules={rules} circuit={circuit} />}>
        <FindingsList label="What is to be said of this circuit" findings={findingsOf(assessment)} />
        <form method="get" action={here} id="what-if">
          <DataTable
            caption="Devices at their highest setting. Tick what you would move or retire, and look at the rest."
            rows={devices}
            rowKey={({ device }) => device.id}
            columns={[
              {
                key: "without",
                head: "Without",
                cell: ({ device }) => (
                  <input
                    type="checkbox"
                    name="without"
                    value={device.id}
                    defaultChecked={leaving.includes(device.id)}
                    aria-label={`without ${device.label}`}
                  />
                ),
              },
              {
                key: "device",
                head: "Device",
                names: true,
                cell: ({ device }) => <Link href={`${path}/${device.id}`}>{device.label}</Link>,
              },
              {
                key: "current",
                head: "Current",
                unit: "A",
                align: "number",
                cell: ({ load }) => (load.status === "ok" ? formatNumber(load.currentA, { decimals: 1 }) : "not known"),
              },
              {
                key: "basis",
                head: "Known by",
                cell: ({ load }) => (load.status === "ok" ? loadBasisLabel(load.basis) : ""),
              },
              {
                key: "continuous",
                head: "Counts as",
                cell: ({ device, countsAsContinuous }) =>
                  countsAsContinuous
                    ? "continuous"
                    : `not continuous: longest run ${formatNumber(device.longestRunHours ?? 0, { decimals: 1 })}\u2009h`,
              },
              {
                key: "outlet",
                head: "Plugged into",
                cell: ({ device }) => [outletLabel(device.outletKind), device.outletLabel].filter(Boolean).join(" "),
              },
              { key: "mapping", head: "Breaker known by", cell: ({ device }) => mappingLabel(device.circuitMapping) },
            ]}
            empty={<p>No device of the register is known to hang on it.</p>}
          />
          {devices.length > 0 ? <Button type="submit">Show it without these</Button> : null}
        </form>
        {without ? (
          <section aria-label="Without what was ticked">
            <h3>Without what was ticked</h3>
            <CircuitBar
              picture={pictureOf(view, new Set(leaving))}
              label={`Amperes on circuit ${name} without what was ticked`}
            />
            <p>{verdictSentence(without, circuit.breakerRatingA)}</p>
          </section>
        ) : null}
        {relief.length > 0 ? (
          <section aria-label="What brings it back under the limit">
            <h3>What brings it back under the limit</h3>
            <ul className={styles.plain}>
              {relief.map((sentence) => (
                <li key={sentence}>{sentence}</li>
              ))}
            </ul>
          </section>
        ) : null}
        <HookUpByLabelForm action={hookUpByLabelAction.bind(null, id, circuit.id)} />
      </Section>
      <Section
        id="breaker"
        title={`${name}, by ${ruleSetLabel(rules)}`}
        action={
          <form action={removeCircuitAction}>
            <input type="hidden" name="buildingId" value={id} />
            <input type="hidden" name="circuitId" value={circuit.id} />
            <Button type="submit">Take it off the register</Button>
          </form>
        }
      >
        <CircuitForm
          key={circuit.updatedAtMs}
          action={reviseCircuitAction.bind(null, id, circuit.id)}
          values={formFromCircuit(circuit)}
          submitLabel="Save the circuit"
        />
      </Section>
    </>
  );
}
