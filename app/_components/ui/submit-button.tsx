"use client";

import type { ReactNode } from "react";
import { useFormStatus } from "react-dom";
import { Button, type ButtonKind } from "./button";

type Props = {
  children: ReactNode;
  /** What the button says while the form is being sent. */
  pendingLabel?: string;
  kind?: ButtonKind;
  name?: string;
  value?: string;
};

/** Submits its form and says so while it is being sent. */
export function SubmitButton({ children, pendingLabel = "Saving", kind = "primary", name, value }: Props) {
  const { pending } = useFormStatus();
  return (
    <Button type="submit" kind={kind} name={name} value={value} disabled={pending} aria-live="polite">
      {pending ? pendingLabel : children}
    </Button>
  );
}
