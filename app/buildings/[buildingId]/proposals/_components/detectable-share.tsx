import { Quantity } from "@/app/_components/quantity/quantity";
import { WorkingDisclosure } from "@/app/_components/quantity/working-disclosure";
import { DefinitionList } from "@/app/_components/ui/definition-list";
import type { Detectability } from "@/lib/proposals/proof/energy-proof";
import type { Working } from "@/lib/working/working";
import { detectabilitySentence } from "../change-words";

type Props = { meter: { daysAfter: number; expected: Working; found: Detectability }; buildingPath: string };

/** What the meter can show before anyone waits, beside what is expected of a day. */
export function DetectableShare({ meter, buildingPath }: Props) {
  const { expected, found } = meter;
  return (
    <>
      <p>{detectabilitySentence(meter)}</p>
      {found.status === "ok" ? (
        <DefinitionList
          items={[
            {
              term: "Least share that can be shown",
              value: (
                <WorkingDisclosure working={found.working} buildingPath={buildingPath}>
                  <Quantity value={100 * found.leastFraction} unit="%" digits={{ decimals: 1 }} /> of an occupied
                  day&rsquo;s electricity
                </WorkingDisclosure>
              ),
            },
            {
              term: "Expected, as issued",
              value: (
                <WorkingDisclosure working={expected} buildingPath={buildingPath}>
                  <Quantity value={expected.result.value} unit="kWh" digits={{ significant: 3 }} /> an occupied day
                </WorkingDisclosure>
              ),
            },
          ]}
        />
      ) : null}
    </>
  );
}
