import type { Metadata } from "next";
import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { Button } from "@/app/_components/ui/button";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { readTariff } from "@/lib/services/tariffs/save";
import { formatLocal } from "@/lib/time/format";
import { TariffForm } from "./_components/tariff-form";
import { removeTariffAction, saveTariffAction } from "./actions";
import { formFromTariff } from "./form";

export const metadata: Metadata = { title: "Tariff" };

type Props = { params: Promise<{ buildingId: string }> };

/** How electricity is billed beyond the one price of the settings. */
export default async function TariffPage({ params }: Props) {
  const id = Number((await params).buildingId);
  const path = `/buildings/${id}`;
  const { building, tariff } = await readAs(
    (ctx) => ({ building: readBuilding(ctx, id), tariff: readTariff(ctx, id) }),
    `${path}/tariff`,
  );
  return (
    <>
      <PageHeading
        title="Electricity tariff"
        lede="A saved kWh is worth the price of its hour or of the month's last block, and a saved kW what the ratchet lets it be. Without a tariff the one price of the settings counts."
      />
      <Section id="tariff" title="As billed" action={<Link href={`${path}/settings`}>Prices in the settings</Link>}>
        <TariffForm action={saveTariffAction.bind(null, id)} values={formFromTariff(tariff)} />
        {tariff ? (
          <form action={removeTariffAction}>
            <p>
              Entered by {tariff.enteredBy}, {formatLocal(tariff.enteredAtMs, building.timeZone, "date-time")}.
            </p>
            <input type="hidden" name="buildingId" value={id} />
            <Button type="submit">Go back to one price</Button>
          </form>
        ) : null}
      </Section>
    </>
  );
}
