import { readFileSync } from "node:fs";

export type CheckNumber = number | readonly number[];

/** What our code makes of an output. */
export type CheckValue = ArrayLike<number> | number | string | boolean;

/** One worked example: inputs, what must come out, and how far each number may be off (absolute). */
export type CheckCase<Inputs> = {
  name: string;
  inputs: Inputs;
  expected: Record<string, CheckNumber | string | boolean>;
  tolerance: Record<string, CheckNumber>;
};

/** Figures from outside this project, with where they come from and how they were obtained. */
export type CheckFile<Inputs> = { source: string; obtained: string; how: string; cases: CheckCase<Inputs>[] };

/** Reads `test/check-values/<path>.json`. Refuses a file without a source, without cases or with an open tolerance. */
export function loadCheckValues<Inputs>(path: string): CheckFile<Inputs> {
  const file = JSON.parse(readFileSync(new URL(`../check-values/${path}.json`, import.meta.url), "utf8"));
  return checkedFile<Inputs>(file, path);
}

export function checkedFile<Inputs>(file: CheckFile<Inputs>, path: string): CheckFile<Inputs> {
  for (const key of ["source", "obtained", "how"] as const) {
    if (!file[key]?.trim()) throw new Error(`${path}: check values need "${key}"`);
  }
  if (!Array.isArray(file.cases) || file.cases.length === 0)
    throw new Error(`${path}: no cases, so nothing is checked`);
  for (const each of file.cases) checkTolerances(each, path);
  return file;
}

function checkTolerances<Inputs>(each: CheckCase<Inputs>, path: string): void {
  const place = `${path}, ${each.name}`;
  if (Object.keys(each.expected ?? {}).length === 0) throw new Error(`${place}: expects nothing`);
  for (const [key, value] of Object.entries(each.expected)) {
    const expected = numbersOf(value);
    if (expected === null) continue;
    const allowed = numbersOf(each.tolerance?.[key]);
    if (allowed === null || allowed.length !== expected.length || !allowed.every((one) => one >= 0)) {
      throw new Error(`${place}: "${key}" needs a tolerance for each number`);
    }
  }
}

/** Throws when a value of `actual` is missing, is not finite or is further from the expected one than its tolerance. */
export function compareWithCase<Inputs>(check: CheckCase<Inputs>, actual: Record<string, CheckValue>): void {
  for (const [key, expected] of Object.entries(check.expected)) {
    const got = actual[key];
    const wanted = numbersOf(expected);
    if (wanted === null) {
      if (got !== expected) throw new Error(`${check.name}: ${key} is ${String(got)}, expected ${String(expected)}`);
      continue;
    }
    const values = typeof got === "object" ? Array.from(got) : [got];
    const allowed = numbersOf(check.tolerance[key]) ?? [];
    if (values.length !== wanted.length)
      throw new Error(`${check.name}: ${key} has ${values.length} values, expected ${wanted.length}`);
    for (const [index, want] of wanted.entries()) {
      const value = values[index];
      const far = Math.abs(Number(value) - want);
      if (typeof value !== "number" || !(far <= (allowed[index] ?? -1))) {
        throw new Error(
          `${check.name}: ${key}[${index}] is ${String(value)}, expected ${want} within ${allowed[index]}`,
        );
      }
    }
  }
}

function numbersOf(value: CheckNumber | string | boolean | undefined): number[] | null {
  if (typeof value === "number") return [value];
  return Array.isArray(value) ? [...value] : null;
}
