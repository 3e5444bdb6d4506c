"use client";

import { type FormEvent, useState } from "react";
import { Button } from "@/app/_components/ui/button";
import { Field } from "@/app/_components/ui/field";
import { FormActions, FormStack } from "@/app/_components/ui/form-stack";
import { SelectField, type SelectOption } from "@/app/_components/ui/select-field";

/** As the use-case has it: told here before the file is on its way [bytes]. */
const LARGEST_BYTES = 25_000_000;

type Props = {
  action: string;
  findings: readonly SelectOption[];
  /** Finding that the page was opened for; "" for none. */
  chosen: string;
};

/** A photo with its caption. A plain form; with script a file that is too large is told before it is sent. */
export function PhotoForm({ action, findings, chosen }: Props) {
  const [fault, setFault] = useState("");
  const submit = (event: FormEvent<HTMLFormElement>) => {
    const file = new FormData(event.currentTarget).get("photo");
    const isTooLarge = file instanceof File && file.size > LARGEST_BYTES;
    setFault(
      isTooLarge
        ? "The file is over 25 MB, more than a photo of a phone has. Choose the photo itself, or make it smaller first."
        : "",
    );
    if (isTooLarge) event.preventDefault();
  };
  return (
    <FormStack action={action} method="post" encType="multipart/form-data" onSubmit={submit}>
      <Field
        name="photo"
        label="Photo"
        type="file"
        accept="image/jpeg,image/png,image/webp"
        hint="JPEG, PNG or WebP, up to 25 MB. It is made smaller."
        error={fault || undefined}
      />
      <Field name="caption" label="What it shows" optional maxLength={200} />
      {findings.length > 0 ? (
        <SelectField
          name="inspectionItemId"
          label="Finding"
          optional
          prompt="none: the device itself"
          defaultValue={chosen}
          options={findings}
        />
      ) : null}
      <FormActions>
        <Button type="submit" kind="primary">
          Add the photo
        </Button>
      </FormActions>
    </FormStack>
  );
}
