import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { ALL_ASSUMPTIONS, findAssumption } from "@/lib/assumptions/all-assumptions";
import { SYSTEM_TYPES } from "@/lib/assumptions/system-type";
import { loadCheckValues } from "../../support/check-values";

const folder = new URL("../../../lib/", import.meta.url);
const sources = (path: string): string =>
  readdirSync(new URL(path, folder), { recursive: true, encoding: "utf8" })
    .filter((each) => each.endsWith(".ts"))
    .map((each) => readFileSync(new URL(`${path}/${each}`, folder), "utf8"))
    .join("\n");
const users = sources("overcooling") + sources("services/meter") + sources("business-case");

test.each(ALL_ASSUMPTIONS)("$id has a source, an ordered range and a use", (each) => {
  expect(each.id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*(\/[a-z0-9]+(-[a-z0-9]+)*)?$/);
  expect(each.low).toBeLessThanOrEqual(each.value);
  expect(each.value).toBeLessThanOrEqual(each.high);
  for (const words of [each.source.title, each.label, each.appliesTo]) expect(words.trim().length).toBeGreaterThan(2);
  expect(each.reviewedOn).toMatch(/^\d{4}-\d{2}-\d{2}$/);
  const [stem, of] = each.id.split("/");
  const uses = of === undefined ? [`"${each.id}"`] : [`"${each.id}"`, `\`${stem}/\${`];
  expect(
    uses.some((use) => users.includes(use)),
    `${each.id} is used nowhere`,
  ).toBe(true);
});

test("only shares, factors and ratios go without a unit", () => {
  const bare = ALL_ASSUMPTIONS.filter((each) => each.unit === "").map((each) => each.label);
  expect(bare.filter((label) => !/share|part of|against|airflow that|mean airflow/.test(label))).toEqual([]);
});

test("ids are unique and can be found", () => {
  expect(new Set(ALL_ASSUMPTIONS.map((each) => each.id)).size).toBe(ALL_ASSUMPTIONS.length);
  for (const each of ALL_ASSUMPTIONS) expect(findAssumption(each.id)).toBe(each);
  expect(findAssumption("no-such-assumption")).toBeUndefined();
});

test("every file of assumptions is in the list of all", () => {
  const listed = new Set(ALL_ASSUMPTIONS.map((each) => each.id));
  const written = [...sources("assumptions").matchAll(/^\s+id: ["`]([^"`$]+)/gm)].map((each) => each[1] as string);
  expect(written.length).toBeGreaterThan(20);
  for (const id of written) {
    expect(
      [...listed].some((each) => each === id || each.startsWith(id)),
      id,
    ).toBe(true);
  }
});

test("judgement is called judgement", () => {
  for (const { id, source } of ALL_ASSUMPTIONS) {
    if (source.confidence === "judgement") expect(source.title + (source.place ?? ""), id).toMatch(/[Jj]udgement/);
  }
});

test("assumed shares of the states add up to 1 for every system", () => {
  for (const system of SYSTEM_TYPES) {
    const shares = ["cooling", "deadband", "reheat"].map(
      (state) => findAssumption(`state-share-${state}/${system}`)?.value ?? Number.NaN,
    );
    expect(shares.reduce((sum, each) => sum + each, 0)).toBeCloseTo(1, 12);
  }
});

type Emissions = { lb_CO2_MWh: number; kg_per_MMBtu: number };
test.each(loadCheckValues<Emissions>("overcooling/emissions").cases)(
  "emission factors are the published ones: $name",
  (check) => {
    const { kg_CO2_kWh: electricity, gas_kg_per_kWh: gas } = check.expected as Record<string, number>;
    expect(
      Math.abs((findAssumption("emission-factor/electricity")?.value ?? 0) - (electricity as number)),
    ).toBeLessThan(0.0005);
    expect(Math.abs((findAssumption("emission-factor/gas")?.value ?? 0) - (gas as number))).toBeLessThan(0.0005);
  },
);
