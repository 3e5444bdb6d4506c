import type { ReactNode } from "react";

/** A remark for the margin: a short note with an optional catchword. */
export function Remark({ title, children }: { title?: string; children: ReactNode }) {
  return (
    <p>
      {title ? <strong>{title}. </strong> : null}
      {children}
    </p>
  );
}
