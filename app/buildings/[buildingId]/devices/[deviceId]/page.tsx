import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { Button } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { Notice } from "@/app/_components/ui/notice";
import { today } from "@/app/_server/clock";
import { readAs } from "@/app/_server/read";
import { controlEffectLabel } from "@/lib/electrical/control-effect";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { statusLabel } from "@/lib/electrical/device-status";
import { readBuilding } from "@/lib/services/buildings/find";
import { readCircuitNames } from "@/lib/services/circuits/read";
import { devicePrice, readDevice } from "@/lib/services/devices/read";
import { readDeviceRecord } from "@/lib/services/devices/record";
import { readPlaces } from "@/lib/services/zones/places";
import { formatLocalDate } from "@/lib/time/format";
import { DeviceForm } from "../_components/device-form";
import { MeasuringCautions } from "../_components/measuring-cautions";
import { reviseDeviceAction } from "../actions";
import { CircuitBar } from "../circuits/_components/circuit-picture";
import { HookUpForm } from "../circuits/_components/hook-up-form";
import { hookUpDeviceAction } from "../circuits/actions";
import { pictureOf, verdictSentence } from "../circuits/view-model";
import { formFromDevice } from "../form";
import { ControlForm } from "./_components/control-form";
import { InspectionSection } from "./_components/inspection-section";
import { LifeStepForm } from "./_components/life-step-form";
import { correctItemAction, moveDeviceAction, noteControlAction, removeControlAction } from "./actions";
import { controlReadings, deviceLede } from "./view-model";

export const metadata: Metadata = { title: "Device" };

type Props = { params: Promise<{ buildingId: string; deviceId: string }> };

export default async function DevicePage({ params }: Props) {
  const { buildingId, deviceId } = await params;
  const id = Number(buildingId);
  const path = `/buildings/${id}/devices/${deviceId}`;
  const { building, places, device, record, circuits } = await readAs(
    (ctx) => ({
      building: readBuilding(ctx, id),
      places: readPlaces(ctx, id),
      device: readDevice(ctx, id, Number(deviceId)),
      record: readDeviceRecord(ctx, id, Number(deviceId)),
      circuits: readCircuitNames(ctx, id),
    }),
    path,
  );
  const day = today(building.timeZone);
  const { circuit } = record;
  return (
    <>
      <PageHeading
        title={`Device ${device.label}`}
        lede={deviceLede(device, deviceClassById(device.deviceClass)?.label ?? device.deviceClass)}
      >
        {record.condition === "out-of-use" ? (
          <Notice kind="danger" title="Take it out of use now: unplug it">
            <a href="#inspection">What its inspection found</a>
          </Notice>
        ) : null}
        {record.condition === "correct-first" ? (
          <Notice kind="caution" title="Something has to be put right before it is used again">
            <a href="#inspection">What its inspection found</a>
          </Notice>
        ) : null}
      </PageHeading>
      <Section
        id="sheet"
        title="Settings"
        wide
        remarks={<MeasuringCautions topic={device.kind === "space-heater" ? "heater-in-use" : "measuring"} />}
      >
        <DeviceForm
          key={device.updatedAtMs}
          action={reviseDeviceAction.bind(null, id, device.id)}
          values={formFromDevice(device)}
          places={places}
          price={devicePrice(building)}
          circuit={
            circuit && { id: circuit.circuit.id, name: circuit.name, breakerRatingA: circuit.circuit.breakerRatingA }
          }
          buildingPath={`/buildings/${id}`}
          submitLabel="Save the sheet"
        />
      </Section>
      <Section id="controls" title="Controls">
        <DataTable
          caption="What turning a control changes, as measured"
          rows={record.controls}
          rowKey={(control) => control.id}
          columns={[
            { key: "name", head: "Control", names: true, cell: (control) => control.name },
            { key: "watts", head: "Low and high end", unit: "W", align: "number", cell: controlReadings },
            { key: "effect", head: "It", cell: (control) => controlEffectLabel(control.effect) },
            { key: "note", head: "What was seen", cell: (control) => control.note },
            {
              key: "remove",
              head: "",
              cell: (control) => (
                <form action={removeControlAction}>
                  <input type="hidden" name="buildingId" value={id} />
                  <input type="hidden" name="deviceId" value={device.id} />
                  <input type="hidden" name="controlId" value={control.id} />
                  <Button type="submit">Take it back</Button>
                </form>
              ),
            },
          ]}
          empty={<p>No control was measured at both of its ends yet.</p>}
        />
        <ControlForm action={noteControlAction.bind(null, id, device.id)} />
      </Section>
      <Section id="circuit" title="Circuit">
        {circuit ? (
          <>
            <p>
              <Link href={`/buildings/${id}/devices/circuits/${circuit.circuit.id}`}>{`Circuit ${circuit.name}`}</Link>
              {`. ${verdictSentence(circuit.assessment, circuit.circuit.breakerRatingA)}`}
            </p>
            <CircuitBar picture={pictureOf(circuit)} label={`Amperes on circuit ${circuit.name}`} />
          </>
        ) : null}
        <HookUpForm
          key={device.updatedAtMs}
          action={hookUpDeviceAction.bind(null, id, device.id)}
          values={{
            circuitId: device.circuitId === null ? "" : String(device.circuitId),
            circuitMapping: device.circuitMapping,
            outletKind: device.outletKind,
            outletLabel: device.outletLabel,
          }}
          circuits={circuits}
        />
      </Section>
      <Section id="inspection" title="Inspection">
        <InspectionSection
          record={record}
          devicePath={path}
          correct={correctItemAction.bind(null, id, device.id)}
          today={day}
        />
      </Section>
      <Section id="field" title="Logs, photos, label">
        <ul>
          <li>
            <Link href={`${path}/plug-logs`}>Plug logs</Link>: which settings are used, for how long, and when
          </li>
          <li>
            <Link href={`${path}/photos`}>Photos</Link> of its label, its place and what an inspection found
          </li>
          <li>
            <Link href={`/buildings/${id}/labels?${new URLSearchParams({ kind: "devices", only: device.label })}`}>
              Label with a code
            </Link>{" "}
            that leads here
          </li>
        </ul>
      </Section>
      <Section id="life" title="Its life">
        <DataTable
          caption="Steps so far"
          rows={record.events}
          rowKey={(event) => event.id}
          columns={[
            { key: "status", head: "Step", names: true, cell: ({ status }) => statusLabel(status) },
            { key: "on", head: "On", cell: ({ onDate }) => formatLocalDate(onDate) },
            { key: "by", head: "By", cell: ({ enteredBy }) => enteredBy },
            { key: "note", head: "Note", cell: ({ note }) => note },
          ]}
        />
        <LifeStepForm
          key={record.events.length}
          action={moveDeviceAction.bind(null, id, device.id)}
          next={record.next}
          today={day}
        />
      </Section>
    </>
  );
}
