"use client";

import { PageHeading } from "@/app/_components/shell/page-heading";
import { PublicShell } from "@/app/_components/shell/public-shell";
import { Button } from "@/app/_components/ui/button";

export default function ErrorPage({ error, reset }: { error: Error & { digest?: string }; reset: () => void }) {
  return (
    <PublicShell>
      <PageHeading
        title="This page could not be made"
        lede="Something went wrong on our side. What was saved before is still saved; what you sent just now may not be."
      />
      <p>
        Try again. If it happens twice, tell whoever runs this server
        {error.digest ? ` and quote the number ${error.digest}` : ""}.
      </p>
      <p>
        <Button kind="primary" onClick={reset}>
          Try again
        </Button>
      </p>
    </PublicShell>
  );
}
