"use client";

import { type ReactNode, useEffect, useRef, useState } from "react";

type Props = {
  /** Figures move under the reader's hand: what is closed is then not drawn at each move. */
  isLive: boolean;
  children: ReactNode;
};

/** The content of a disclosure: there from the start without script, and once figures are live only while it is open. */
export function OpenedContent({ isLive, children }: Props) {
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
  return <div ref={place}>{!isLive || isOpen ? children : null}</div>;
}
