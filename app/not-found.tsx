import Link from "next/link";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { PublicShell } from "@/app/_components/shell/public-shell";

export const metadata = { title: "Not in this ledger" };

export default function NotFound() {
  return (
    <PublicShell>
      <PageHeading
        title="Not in this ledger"
        lede="There is nothing at this address, or your account has no right to see it. Nothing was changed."
      />
      <p>
        Check the address, or go to <Link href="/buildings">the buildings</Link>.
      </p>
    </PublicShell>
  );
}
