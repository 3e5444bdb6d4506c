import type { ReactNode } from "react";
import { PageShell } from "@/app/_components/shell/page-shell";
import { readAs } from "@/app/_server/read";
import { currentActor } from "@/app/_server/session";
import { SignOutForm } from "@/app/sign-in/sign-out-form";
import { readBuilding } from "@/lib/services/buildings/find";

type Props = { params: Promise<{ buildingId: string }>; children: ReactNode };

export default async function BuildingLayout({ params, children }: Props) {
  const { buildingId } = await params;
  const user = await currentActor();
  // The page itself sends a stranger to sign-in, and knows the address to lead back to.
  if (user.kind !== "user") return children;
  const building = await readAs((ctx) => readBuilding(ctx, Number(buildingId)));
  return (
    <PageShell building={building} userName={user.name} signOut={<SignOutForm />}>
      {children}
    </PageShell>
  );
}
