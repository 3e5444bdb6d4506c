"use client";

import { type FormEvent, useCallback, useEffect, useState } from "react";
import { Button } from "@/app/_components/ui/button";
import { Field } from "@/app/_components/ui/field";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SelectField } from "@/app/_components/ui/select-field";
import type { FileOutcome } from "@/lib/services/imports/take-file";
import { isOpen } from "./transfer";
import { TransferList } from "./transfer-list";
import { UnfinishedUploads } from "./unfinished-uploads";
import { useTransfers } from "./use-transfers";

const KINDS = [
  { value: "trends", label: "Trend logs (CSV, or a zip of them)" },
  { value: "weather", label: "Weather year (EPW or TMY3)" },
  { value: "zones", label: "Zones (CSV)" },
  { value: "desks", label: "Desks (CSV)" },
  { value: "devices", label: "Devices (CSV)" },
  { value: "bills", label: "Electricity bills (CSV)" },
];

/**
 * Files of one kind at a time. Without script a plain multipart form; with it, trend files go in parts to `<action>s`,
 * so that a file may have any size and survives a dropped line and a page that is loaded again.
 */
export function UploadForm({ action }: { action: string }) {
  const base = `${action}s`;
  const [isSettling, setSettling] = useState(false);
  const onSettled = useCallback(
    async (outcomes: FileOutcome[]) => {
      setSettling(true);
      const answer = await fetch(`${base}/outcome`, { method: "POST", body: JSON.stringify(outcomes) }).catch(
        () => null,
      );
      const { address } = answer?.ok ? await answer.json() : { address: window.location.pathname };
      window.location.assign(address);
    },
    [base],
  );
  const { transfers, unfinished, start, pause, resume, remove, discard } = useTransfers(base, onSettled);
  const isSending = transfers.some(isOpen);

  useEffect(() => {
    if (!isSending) return;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener("beforeunload", ask);
    return () => window.removeEventListener("beforeunload", ask);
  }, [isSending]);

  const submit = (event: FormEvent<HTMLFormElement>) => {
    const form = event.currentTarget;
    const data = new FormData(form);
    const files = data.getAll("files").filter((each): each is File => each instanceof File && each.name !== "");
    if (data.get("kind") !== "trends" || files.length === 0) return;
    event.preventDefault();
    start(files);
    const chosen = form.elements.namedItem("files");
    if (chosen instanceof HTMLInputElement) chosen.value = "";
  };

  return (
    <FormStack action={action} method="post" encType="multipart/form-data" onSubmit={submit}>
      <SelectField name="kind" label="What the files hold" options={KINDS} />
      <Field
        name="files"
        label="Files"
        type="file"
        multiple
        hint="As many as you like. Trend files are sent in parts and may have any size the server has room for (200 MB together without script). A file that was brought in before changes nothing."
      />
      <FormActions>
        <Button type="submit" kind="primary">
          Bring in
        </Button>
      </FormActions>
      <TransferList transfers={transfers} onPause={pause} onResume={resume} onRemove={remove} />
      {isSettling ? <p role="status">All files are here; the first of them are being read.</p> : null}
      <UnfinishedUploads uploads={unfinished} onDiscard={(each) => void discard(each)} />
    </FormStack>
  );
}
