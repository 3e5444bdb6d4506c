import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { MeasuringCautions } from "../../_components/measuring-cautions";
import { CircuitForm } from "../_components/circuit-form";
import { addCircuitAction } from "../actions";
import { newCircuitForm } from "../form";

export const metadata: Metadata = { title: "Add a circuit" };

type Props = { params: Promise<{ buildingId: string }> };

export default async function NewCircuitPage({ params }: Props) {
  const id = Number((await params).buildingId);
  const building = await readAs((ctx) => readBuilding(ctx, id), `/buildings/${id}/devices/circuits/new`);
  return (
    <>
      <PageHeading title="Add a circuit" lede="What the panel's door says, and what else is known to hang on it." />
      <Section id="breaker" title="Circuit" remarks={<MeasuringCautions />}>
        <CircuitForm
          action={addCircuitAction.bind(null, id)}
          values={newCircuitForm(building.mainsVoltageV)}
          submitLabel="Add the circuit"
        />
      </Section>
    </>
  );
}
