"use client";

import { type ReactNode, useEffect, useRef, useState } from "react";

/**
 * The content of a disclosure, drawn only while it is open: a working with all that it rests on has thousands of lines, and
 * figures move under the reader's hand.
 */
export function OpenedContent({ children }: { children: ReactNode }) {
  const place = useRef<HTMLDivElement>(null);
  const [isOpen, setIsOpen] = useState(false);
  useEffect(() => {
    const details = place.current?.closest("details");
    if (!details) return;
    const follow = () => setIsOpen(details.open);
    follow();
    details.addEventListener("toggle", follow);
    return () => details.removeEventListener("toggle", follow);
  }, []);
  return <div ref={place}>{isOpen ? children : null}</div>;
}
