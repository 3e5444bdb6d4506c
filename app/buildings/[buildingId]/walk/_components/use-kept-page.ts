import { useEffect, useState } from "react";

/** Whether the page itself opens without network: `cannot` where the address is not secure or the browser keeps nothing. */
export type KeptPage = "asking" | "kept" | "cannot";

/** Has the service worker keep this page and everything it was drawn with. */
export function useKeptPage(path: string): KeptPage {
  const [kept, setKept] = useState<KeptPage>("asking");
  useEffect(() => {
    if (process.env.NODE_ENV !== "production" || !("serviceWorker" in navigator)) {
      setKept("cannot");
      return;
    }
    const heard = (event: MessageEvent) => {
      if (event.data?.say === "kept") setKept("kept");
      else if (event.data?.say === "not-kept" && !navigator.serviceWorker.controller) setKept("cannot");
      else if (event.data?.say === "not-kept") setKept("kept");
    };
    navigator.serviceWorker.addEventListener("message", heard);
    const begin = async () => {
      await navigator.serviceWorker.register("/walk-worker.js", { scope: path });
      const { active } = await navigator.serviceWorker.ready;
      if (document.readyState !== "complete")
        await new Promise((resolve) => window.addEventListener("load", resolve, { once: true }));
      active?.postMessage({ say: "keep", addresses: [location.origin + path, ...loadedAddresses()] });
    };
    begin().catch(() => setKept(navigator.serviceWorker.controller ? "kept" : "cannot"));
    return () => navigator.serviceWorker.removeEventListener("message", heard);
  }, [path]);
  return kept;
}

/** Scripts, styles and fonts of this page. */
function loadedAddresses(): string[] {
  const addresses = performance.getEntriesByType("resource").map((entry) => entry.name);
  return [...new Set(addresses)].filter((address) => address.startsWith(`${location.origin}/_next/static/`));
}
