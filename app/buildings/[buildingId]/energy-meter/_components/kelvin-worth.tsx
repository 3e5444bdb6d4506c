import { Quantity } from "@/app/_components/quantity/quantity";
import { Range } from "@/app/_components/quantity/range";
import { WorkingDisclosure } from "@/app/_components/quantity/working-disclosure";
import { DefinitionList } from "@/app/_components/ui/definition-list";
import type { KelvinWorth } from "@/lib/services/meter/kelvin-worth";

/** What a kelvin of cooling setpoint is worth: energy with its working, its error, and what it is a part of. */
export function KelvinWorthList({ worth, buildingPath }: { worth: KelvinWorth; buildingPath: string }) {
  const { energy, energyWorking } = worth;
  return (
    <DefinitionList
      items={[
        {
          term: "Energy",
          value: (
            <WorkingDisclosure working={energyWorking} buildingPath={buildingPath}>
              <Range range={energy.range} unit="kWh" per="a year" />
            </WorkingDisclosure>
          ),
        },
        {
          term: "Standard error",
          value: <Quantity value={energy.standardErrorKwh} unit="kWh" digits={{ significant: 2 }} />,
          note: (
            <>
              of which <Quantity value={energy.fitErrorKwh} unit="kWh" digits={{ significant: 2 }} /> are the
              fit&rsquo;s; the rest is what is not known of how the building answers.
            </>
          ),
        },
        {
          term: "Share of the energy above the change point",
          value: <Quantity value={100 * energy.coolingFraction} unit="%" digits={{ significant: 2 }} />,
        },
        {
          term: "Change point moved by a kelvin of setpoint",
          value: <Quantity value={energy.response} unit="K" digits={{ significant: 2 }} />,
          note: "Zones at minimum airflow or in reheat do not answer to a cooling setpoint.",
        },
      ]}
    />
  );
}
