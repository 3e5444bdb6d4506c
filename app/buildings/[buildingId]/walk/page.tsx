import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { LinkButton } from "@/app/_components/ui/button";
import { Disclosure } from "@/app/_components/ui/disclosure";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { DEVICE_CLASSES } from "@/lib/electrical/device-classes";
import { readBuilding } from "@/lib/services/buildings/find";
import { readWalk } from "@/lib/services/walks/read";
import { formatLocal } from "@/lib/time/format";
import { MeasuringCautions } from "../devices/_components/measuring-cautions";
import { WalkForm } from "./_components/walk-forms";
import { WalkScreen } from "./_components/walk-screen";
import { finishWalkAction, startWalkAction } from "./actions";
import { progressWords } from "./view-model";

export const metadata: Metadata = { title: "Walk-through" };

type Props = { params: Promise<{ buildingId: string }> };

/** Desk after desk with a phone in one hand. The walk itself needs script; a device can be registered without. */
export default async function WalkPage({ params }: Props) {
  const id = Number((await params).buildingId);
  const path = `/buildings/${id}`;
  const { building, view } = await readAs(
    (ctx) => ({ building: readBuilding(ctx, id), view: readWalk(ctx, id) }),
    `${path}/walk`,
  );
  const { walk, desks, earlier } = view;
  if (desks.length === 0)
    return (
      <>
        <PageHeading title="Walk-through" />
        <EmptyState action={<LinkButton href={`${path}/imports`}>Bring in desks</LinkButton>}>
          A walk goes from desk to desk, and this building has none yet. Bring them in as a table, or add them at their
          zone.
        </EmptyState>
      </>
    );
  if (!walk)
    return (
      <>
        <PageHeading
          title="Walk-through"
          lede={`${desks.length} desks to see. What is entered is kept on the phone and sent when there is a network.`}
        />
        <Section id="start" title="Start" remarks={<MeasuringCautions />}>
          <WalkForm action={startWalkAction.bind(null, id)} label="Start a walk" />
          {earlier.length > 0 ? (
            <p>
              The last one was started by {earlier[0]?.startedBy},{" "}
              {formatLocal(earlier[0]?.startedAtMs ?? 0, building.timeZone, "date-time")}.
            </p>
          ) : null}
        </Section>
      </>
    );
  return (
    <>
      <h1 className="visually-hidden">Walk-through</h1>
      <noscript>
        <p>
          The walk needs script, to keep entries without network: {progressWords(desks, [])} so far.{" "}
          <a href={`${path}/devices/new`}>Register a device without it.</a>
        </p>
      </noscript>
      <WalkScreen
        buildingId={id}
        walkId={walk.id}
        view={{ desks, circuits: view.circuits, labels: view.labels }}
        classes={DEVICE_CLASSES}
        mainsVoltageV={building.mainsVoltageV}
      >
        <Disclosure summary="Before you measure, and the end of the walk">
          <MeasuringCautions />
          <p>
            Started by {walk.startedBy}, {formatLocal(walk.startedAtMs, building.timeZone, "date-time")}.{" "}
            <Link href={`${path}/devices`}>The register</Link>
          </p>
          {view.missing.length > 0 ? (
            <p>
              {"Not found at their desks: "}
              {view.missing.map(({ id: deviceId, label, deskCode }, at) => (
                <span key={`${deviceId} ${deskCode}`}>
                  {at > 0 ? ", " : ""}
                  <Link href={`${path}/devices/${deviceId}`}>{label}</Link> ({deskCode})
                </span>
              ))}
              . Say on the device&rsquo;s page whether it was removed.
            </p>
          ) : null}
          <WalkForm
            action={finishWalkAction.bind(null, { buildingId: id, walkId: walk.id })}
            label="End this walk"
            kind="plain"
          />
        </Disclosure>
      </WalkScreen>
    </>
  );
}
