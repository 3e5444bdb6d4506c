import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { Button } from "@/app/_components/ui/button";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SelectField } from "@/app/_components/ui/select-field";
import { today } from "@/app/_server/clock";
import { readAs } from "@/app/_server/read";
import { CHECKLIST_IDS, type ChecklistId, checklistLabel } from "@/lib/electrical/inspection/checklists";
import { INSPECTION_CAUTIONS } from "@/lib/electrical/inspection/inspection-words";
import { readBuilding } from "@/lib/services/buildings/find";
import { readDevice } from "@/lib/services/devices/read";
import { readDeviceRecord } from "@/lib/services/devices/record";
import { itemsFor } from "@/lib/services/inspections/record";
import { verdictSentence } from "../../circuits/view-model";
import { ChecklistForm } from "../_components/checklist-form";
import { recordInspectionAction } from "../actions";
import { circuitItems } from "../view-model";

export const metadata: Metadata = { title: "Inspect a device" };

type Props = {
  params: Promise<{ buildingId: string; deviceId: string }>;
  searchParams: Promise<{ checklist?: string }>;
};

export default async function InspectionPage({ params, searchParams }: Props) {
  const { buildingId, deviceId } = await params;
  const id = Number(buildingId);
  const path = `/buildings/${id}/devices/${deviceId}/inspection`;
  const { building, device, record } = await readAs(
    (ctx) => ({
      building: readBuilding(ctx, id),
      device: readDevice(ctx, id, Number(deviceId)),
      record: readDeviceRecord(ctx, id, Number(deviceId)),
    }),
    path,
  );
  const asked = (await searchParams).checklist;
  const usual: ChecklistId = building.mainsVoltageV >= 220 ? "uk-2013" : "us-ifc-2018";
  const checklist = CHECKLIST_IDS.find((each) => each === asked) ?? usual;
  const circuit = record.circuit;
  return (
    <>
      <PageHeading
        title={`Inspect ${device.label}`}
        lede="Each line names a fault. Say whether it was found so; what was not looked at stays not looked at."
      />
      <Section
        id="checklist"
        title={checklistLabel(checklist)}
        remarks={INSPECTION_CAUTIONS.map((caution) => <p key={caution}>{caution}</p>)}
      >
        <FormStack action={path} method="get">
          <SelectField
            name="checklist"
            label="Checklist"
            defaultValue={checklist}
            options={CHECKLIST_IDS.map((value) => ({ value, label: checklistLabel(value) }))}
          />
          <FormActions>
            <Button type="submit">Show this one</Button>
          </FormActions>
        </FormStack>
        <p>
          {circuit
            ? `Circuit ${circuit.name}. ${verdictSentence(circuit.assessment, circuit.circuit.breakerRatingA)}`
            : "Its circuit is not known, so the items about the circuit cannot be answered from here."}
        </p>
        <ChecklistForm
          key={checklist}
          action={recordInspectionAction.bind(null, id, device.id)}
          checklist={checklist}
          items={itemsFor(device, checklist)}
          values={{ inspectedOn: today(building.timeZone), ...circuitItems(circuit) }}
        />
      </Section>
    </>
  );
}
