import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { PageShell } from "@/app/_components/shell/page-shell";
import { requireUser } from "@/app/_server/session";
import { SignOutForm } from "@/app/sign-in/sign-out-form";
import { BuildingForm } from "../_components/building-form";
import { NEW_BUILDING } from "../form";
import { createBuildingAction } from "./actions";

export const metadata: Metadata = { title: "Set up a building" };

export default async function NewBuildingPage() {
  const user = await requireUser("/buildings/new");
  return (
    <PageShell userName={user.name} signOut={<SignOutForm />}>
      <PageHeading
        title="Set up a building"
        lede="What the cost is counted by: the clock, the hours, the system and the prices. All of it can be changed later."
      />
      <BuildingForm
        action={createBuildingAction}
        values={NEW_BUILDING}
        timeZones={Intl.supportedValuesOf("timeZone")}
        submitLabel="Set up the building"
      />
    </PageShell>
  );
}
