import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { LinkButton } from "@/app/_components/ui/button";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { Tag } from "@/app/_components/ui/tag";
import { readAs } from "@/app/_server/read";
import { RULE_SETS, ruleSetLabel } from "@/lib/electrical/circuit/rule-sets";
import { circuitName, feederLoads, readCircuits } from "@/lib/services/circuits/read";
import { CircuitBar } from "./_components/circuit-picture";
import styles from "./circuits.module.css";
import { circuitsLede, commonEndA, feederSentence, pictureOf, verdictSentence, verdictTag } from "./view-model";

export const metadata: Metadata = { title: "Circuits" };

type Props = { params: Promise<{ buildingId: string }> };

export default async function CircuitsPage({ params }: Props) {
  const id = Number((await params).buildingId);
  const path = `/buildings/${id}/devices/circuits`;
  const views = await readAs((ctx) => readCircuits(ctx, id), path);
  const endA = commonEndA(views.map((view) => pictureOf(view)));
  const add = (
    <LinkButton kind="primary" href={`${path}/new`}>
      Add a circuit
    </LinkButton>
  );
  return (
    <>
      <PageHeading title="Circuits" lede={circuitsLede(views)} />
      <Section
        id="circuits"
        title="Branch circuits"
        wide
        action={views.length > 0 ? add : null}
        remarks={
          <>
            {feederLoads(views).map((feeder) => (
              <p key={feeder.panel}>{feederSentence(feeder)}</p>
            ))}
            <p>
              A screening aid, no inspection: every device at its highest setting, all at once, without diversity. The
              local code as adopted and whoever enforces it decide. That a breaker has not tripped proves nothing.
            </p>
          </>
        }
      >
        {views.length === 0 ? (
          <EmptyState action={add}>
            No circuit yet. Read panel, number and rating off the panel&apos;s door, then say which devices hang on it.
          </EmptyState>
        ) : (
          <ul className={styles.list}>
            {views.map((view) => {
              const tag = verdictTag(view.assessment);
              const name = circuitName(view.circuit);
              return (
                <li key={view.circuit.id} className={styles.circuit}>
                  <h3 className={styles.name}>
                    <Link href={`${path}/${view.circuit.id}`}>{name}</Link> <Tag kind={tag.kind}>{tag.word}</Tag>{" "}
                    <span className={styles.rules}>{ruleSetLabel(RULE_SETS[view.circuit.ruleSet])}</span>
                  </h3>
                  <CircuitBar picture={{ ...pictureOf(view), endA }} label={`Amperes on circuit ${name}`} />
                  <p className={styles.sentence}>{verdictSentence(view.assessment, view.circuit.breakerRatingA)}</p>
                </li>
              );
            })}
          </ul>
        )}
      </Section>
    </>
  );
}
