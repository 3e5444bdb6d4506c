import type { RuleSetId } from "@/lib/electrical/circuit/circuit-kinds";
import { addCircuit, hookUpDevice } from "@/lib/services/circuits/save";
import { registerDevice } from "@/lib/services/devices/register";
import { beSignedIn, expect, test } from "./fixtures";
import { type RegisterBuilding, registerBuilding } from "./register-building";

type Case = {
  what: string;
  rules: RuleSetId;
  breakerA: number;
  baseA: number;
  heaters: number;
  watts: number;
  /** Outlet that all of them share. */
  outlet?: { kind: "twin-socket" | "extension-lead"; label: string };
  says: string[];
  finding?: string;
};

const OVER = "Above the breaker's rating";
const CONTINUOUS = "Above the code's planning limit for continuous load";
const WITHIN = "Within the code's planning limits";

/**
 * Amperes, multiples and bands by hand: watts over 120 or 230 V and the base load; 125 % of continuous load (NEC 210.20(A), excerpt);
 * bands of UL 489 and IEC 60898-1:2002 (excerpts of summaries); twin socket BS 1363-2 and plug fuse BS 1362 (second hand).
 */
const CASES: readonly Case[] = [
  {
    what: "1a",
    rules: "nec-2023",
    breakerA: 15,
    baseA: 0,
    heaters: 1,
    watts: 1500,
    says: [CONTINUOUS, "12.5 A", "0.83 of 15.0 A", "0.5 A over the continuous limit"],
  },
  {
    what: "2a",
    rules: "nec-2023",
    breakerA: 15,
    baseA: 3,
    heaters: 1,
    watts: 1500,
    says: [OVER, "15.5 A", "1.03 of 15.0 A"],
  },
  {
    what: "2b",
    rules: "nec-2023",
    breakerA: 20,
    baseA: 3,
    heaters: 1,
    watts: 1500,
    says: [WITHIN, "15.5 A", "0.78 of 20.0 A", "0.5 A of continuous load left"],
  },
  {
    what: "3a",
    rules: "nec-2023",
    breakerA: 20,
    baseA: 0,
    heaters: 2,
    watts: 1500,
    says: [OVER, "25.0 A", "1.25 of 20.0 A", "may hold"],
  },
  {
    what: "4a",
    rules: "nec-2023",
    breakerA: 20,
    baseA: 3,
    heaters: 2,
    watts: 1500,
    says: [OVER, "28.0 A", "1.40 of 20.0 A", "trips within the hour"],
  },
  {
    what: "5a",
    rules: "nec-2017",
    breakerA: 15,
    baseA: 0,
    heaters: 2,
    watts: 1500,
    says: [OVER, "25.0 A", "1.67 of 15.0 A", "trips within the hour"],
  },
  {
    what: "6a",
    rules: "nec-2023",
    breakerA: 20,
    baseA: 0,
    heaters: 4,
    watts: 1500,
    says: [OVER, "50.0 A", "2.50 of 20.0 A", "trips within two minutes"],
  },
  {
    what: "7a",
    rules: "nec-2023",
    breakerA: 20,
    baseA: 6,
    heaters: 4,
    watts: 170,
    says: [WITHIN, "11.7 A", "0.58 of 20.0 A", "4.3 A of continuous load left"],
  },
  {
    what: "8a",
    rules: "iec-uk-2018",
    breakerA: 32,
    baseA: 0,
    heaters: 2,
    watts: 3000,
    outlet: { kind: "twin-socket", label: "S1" },
    says: [WITHIN, "26.1 A", "0.82 of 32.0 A"],
    finding: "above the 20 A that both halves are made for",
  },
  {
    what: "8b",
    rules: "iec-uk-2018",
    breakerA: 32,
    baseA: 0,
    heaters: 3,
    watts: 3000,
    says: [OVER, "39.1 A", "1.22 of 32.0 A", "may hold"],
  },
  {
    what: "8c",
    rules: "iec-uk-2018",
    breakerA: 32,
    baseA: 0,
    heaters: 4,
    watts: 3000,
    says: [OVER, "52.2 A", "1.63 of 32.0 A", "trips within the hour"],
  },
  {
    what: "9a",
    rules: "iec-uk-2018",
    breakerA: 16,
    baseA: 0,
    heaters: 2,
    watts: 2000,
    says: [OVER, "17.4 A", "1.09 of 16.0 A", "must hold for at least an hour"],
  },
  {
    what: "9b",
    rules: "iec-uk-2018",
    breakerA: 20,
    baseA: 0,
    heaters: 2,
    watts: 2000,
    outlet: { kind: "extension-lead", label: "L1" },
    says: [WITHIN, "17.4 A", "0.87 of 20.0 A"],
    finding: "1.34 times its rating. The fuse does not open, but the lead overheats.",
  },
];

const CLASSES: Record<number, string> = {
  170: "radiant-panel",
  1500: "fan-heater-1500",
  2000: "fan-heater-2kw",
  3000: "fan-heater-3kw",
};

let made: RegisterBuilding;

test.beforeAll(() => {
  made = registerBuilding("Circuits of the table");
  for (const { what, rules, breakerA, baseA, heaters, watts, outlet } of CASES) {
    const voltageV = rules === "iec-uk-2018" ? 230 : 120;
    const circuitId = addCircuit(made.ctx, made.id, {
      panel: "T",
      circuit: what,
      ruleSet: rules,
      breakerRatingA: breakerA,
      voltageV,
      baseContinuousA: baseA,
      baseNonContinuousA: 0,
    });
    for (let i = 0; i < heaters; i++) {
      const id = registerDevice(made.ctx, made.id, {
        label: `${what}-${i + 1}`,
        kind: "space-heater",
        deviceClass: CLASSES[watts] ?? "",
        zoneCode: "1-01",
        foundOn: "2026-01-20",
        nameplateW: watts,
        nameplateVoltageV: voltageV,
        settings: [{ name: "high-heat", basis: "class-default" }],
      });
      hookUpDevice(made.ctx, made.id, id, {
        circuitId,
        circuitMapping: "circuit-tracer",
        outletKind: outlet?.kind ?? "duplex",
        outletLabel: outlet?.label ?? "",
      });
    }
  }
});
test.afterAll(() => made.remove());

const plain = (text: string): string => text.replaceAll("\u2009", " ");

test("says of every circuit what the reference table says, and who has to confirm it", async ({ page }) => {
  await beSignedIn(page, "demo");
  await page.goto(made.address("/devices/circuits"));
  for (const { what, says } of CASES) {
    const circuit = page
      .getByRole("listitem")
      .filter({ has: page.getByRole("link", { name: `T-${what}`, exact: true }) });
    const text = plain((await circuit.textContent()) ?? "");
    for (const words of [...says, "A licensed electrician must confirm the circuit."])
      expect(text, `circuit ${what}`).toContain(words);
    expect(text).not.toContain("illegal");
    await expect(circuit.getByRole("img", { name: `Amperes on circuit T-${what}` })).toBeVisible();
  }
});

test("shows on a circuit's own page what its outlets say, what brings it back, and what would be without", async ({
  page,
}) => {
  await beSignedIn(page, "demo");
  for (const { what, finding } of CASES.filter((each) => each.finding)) {
    await page.goto(made.address("/devices/circuits"));
    await page.getByRole("link", { name: `T-${what}`, exact: true }).click();
    await expect(page.getByRole("heading", { level: 1 })).toHaveText(`Circuit T-${what}`);
    await expect(page.getByRole("list", { name: "What is to be said of this circuit" })).toContainText(finding ?? "");
  }
  await page.goto(made.address("/devices/circuits"));
  await page.getByRole("link", { name: "T-4a", exact: true }).click();
  await expect(page.getByRole("region", { name: "What brings it back under the limit" })).toContainText(
    "Moving or retiring 4a-1 (12.5\u2009A) leaves 15.5\u2009A, within the limits.",
  );
  await page.getByRole("checkbox", { name: "without 4a-2" }).check();
  await page.getByRole("button", { name: "Show it without these" }).click();
  const without = page.getByRole("region", { name: "Without what was ticked" });
  await expect(without).toContainText("Within the code's planning limits: 15.5");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Circuit T-4a");
});

test("is entered without script, refuses what cannot be, and keeps what was typed", async ({ browser }) => {
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await beSignedIn(page, "demo");
  await page.goto(made.address("/devices/circuits/new"));
  await page.getByLabel("Panel").fill("LP-9");
  await page.getByRole("textbox", { name: "Circuit", exact: true }).fill("2");
  await page.getByLabel("Breaker rating").fill("2000");
  await page.getByRole("button", { name: "Add the circuit" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "2000 was typed" })).toContainText(
    "The breaker's rating lies between 1 and 200 A; 2000 was typed.",
  );
  await expect(page.getByLabel("Panel")).toHaveValue("LP-9");
  await page.getByLabel("Breaker rating").fill("20");
  await page.getByRole("button", { name: "Add the circuit" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Circuit LP-9-2");
  await expect(page.getByText("Not established: the base load is not known.").first()).toBeVisible();
  await page.getByLabel("Its sticker").fill("nobody");
  await page.getByRole("button", { name: "Hang it on" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "nobody" })).toContainText('no device labelled "nobody"');
  await context.close();
});
