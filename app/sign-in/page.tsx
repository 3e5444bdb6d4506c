import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { PublicShell } from "@/app/_components/shell/public-shell";
import { Notice } from "@/app/_components/ui/notice";
import { nextPath } from "@/app/_server/next-path";
import { readAs } from "@/app/_server/read";
import { currentActor } from "@/app/_server/session";
import { hasUsers } from "@/lib/services/access/has-users";
import { SignInForm } from "./form";

export const metadata: Metadata = { title: "Sign in" };

type Props = { searchParams: Promise<{ next?: string | string[] }> };

export default async function SignInPage({ searchParams }: Props) {
  const next = nextPath((await searchParams).next);
  const actor = await currentActor();
  if (actor.kind === "user") redirect(next);
  const ready = await readAs(hasUsers);
  return (
    <PublicShell>
      <PageHeading title="Sign in" lede="For the people who look after the building." />
      {ready ? null : (
        <Notice kind="caution" title="There is no account yet">
          <p>
            Run <code>npm run cli -- access ensure</code> where the server runs. It makes the first administrator and
            shows the password once.
          </p>
        </Notice>
      )}
      <SignInForm next={next} />
    </PublicShell>
  );
}
