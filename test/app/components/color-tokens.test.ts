import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { contrastRatio } from "@/app/_components/charts/temp-difference-color";

const css = readFileSync(new URL("../../../app/globals.css", import.meta.url), "utf8");
const registered = new Map(
  [...css.matchAll(/@property (--[\w-]+)\s*\{[^}]*initial-value:\s*(#[0-9a-f]{6})/g)].map((m) => [m[1], m[2]]),
);
const pairs = new Map(
  [...css.matchAll(/(--[\w-]+):\s*light-dark\((#[0-9a-f]{6}),\s*(#[0-9a-f]{6})\)/g)].map((m) => [
    m[1] ?? "",
    { light: m[2] ?? "", dark: m[3] ?? "" },
  ]),
);

/** WCAG 2.2: 4.5 for text (1.4.3), 3 for parts of controls and pictures (1.4.11). */
const CHECKS: [string, string, number][] = [
  ["--ink", "--paper", 4.5],
  ["--ink", "--paper-sunk", 4.5],
  ["--ink-soft", "--paper", 4.5],
  ["--ink-soft", "--paper-sunk", 4.5],
  ["--accent", "--paper", 4.5],
  ["--on-accent", "--accent", 4.5],
  ["--danger", "--paper", 4.5],
  ["--cold", "--paper", 4.5],
  ["--warm", "--paper", 4.5],
  ["--ink", "--comfort-band", 4.5],
  ["--cold", "--comfort-band", 3],
  ["--warm", "--comfort-band", 3],
  ["--rule-strong", "--paper", 3],
  ["--rule-strong", "--paper-sunk", 3],
  ["--state-cooling", "--paper", 3],
  ["--state-fault", "--paper", 3],
];

describe("colour tokens", () => {
  it("are all registered, with the light colour as the initial one", () => {
    expect(pairs.size).toBeGreaterThan(20);
    for (const [name, { light }] of pairs) expect([name, registered.get(name)]).toEqual([name, light]);
    expect(registered.size).toBe(pairs.size);
  });

  it.each(CHECKS)("%s on %s reaches %d:1 in light and dark", (front, back, least) => {
    for (const scheme of ["light", "dark"] as const) {
      const ratio = contrastRatio(pairs.get(front)?.[scheme] ?? "", pairs.get(back)?.[scheme] ?? "");
      expect(ratio, scheme).toBeGreaterThanOrEqual(least);
    }
  });

  it("keep the four state tones apart in grey", () => {
    const tones = ["--state-cooling", "--state-reheat", "--state-deadband", "--state-undetermined"];
    for (const scheme of ["light", "dark"] as const) {
      for (let i = 1; i < tones.length; i++) {
        const ratio = contrastRatio(
          pairs.get(tones[i - 1] ?? "")?.[scheme] ?? "",
          pairs.get(tones[i] ?? "")?.[scheme] ?? "",
        );
        expect(ratio, `${scheme} ${tones[i]}`).toBeGreaterThanOrEqual(1.25);
      }
    }
  });
});
