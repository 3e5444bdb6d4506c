import fc from "fast-check";
import { expect, test } from "vitest";
import { bytesInMemory } from "@/lib/importers/trend-csv/byte-source";
import { HeldParts } from "@/lib/importers/trend-csv/held-parts";
import { packWritten, unpackValues } from "@/lib/importers/trend-csv/packed-readings";
import { readTrendFile } from "@/lib/importers/trend-csv/read-trend-file";
import { inspectTrendSource } from "@/lib/importers/trend-csv/read-trend-parts";
import { Slabs } from "@/lib/importers/trend-csv/slabs";
import type { PartPoint, TrendFileResult, TrendPart } from "@/lib/importers/trend-csv/trend-file";

const RESULT = { outcome: "accept" } as unknown as TrendFileResult;
const NAMES = ["ZN-T", "SP", "FLOW"] as const;

/** Instants of a part, and for each point the values at some of them: undefined for a point that the part has not. */
const instants = fc.uniqueArray(fc.integer({ min: 0, max: 400 }), { minLength: 1, maxLength: 90 });
const value = fc.oneof(
  fc.integer({ min: -300, max: 300 }).map((tenths) => tenths / 10),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
);
const column = fc.option(fc.array(fc.option(value, { nil: null, freq: 9 }), { minLength: 90, maxLength: 90 }), {
  nil: null,
});
const made = fc.array(fc.tuple(instants, fc.tuple(column, column, column)), { minLength: 1, maxLength: 5 });

function partOf(at: readonly number[], columns: readonly ((number | null)[] | null)[], isFirst: boolean): TrendPart {
  const among = Float64Array.from(
    at.toSorted((a, b) => a - b),
    (step) => 1_700_000_000 + 900 * step,
  );
  const points = columns.flatMap((values, k): PartPoint[] => {
    if (!values) return [];
    const kept = [...among.keys()].filter((i) => values[i] !== null);
    const tsUtcSeconds = Float64Array.from(kept, (i) => among[i] as number);
    const own = Float64Array.from(kept, (i) => values[i] as number);
    return [
      {
        name: NAMES[k] as string,
        kind: "numeric",
        unit: "degF",
        unitAsWritten: "°F",
        tsUtcSeconds,
        values: own,
        among,
      },
    ];
  });
  const progress = { bytesRead: 1, bytesInFile: 2, rows: among.length, readings: 0, findings: [] };
  return { points, progress, isFirst };
}

const readingsOf = (points: readonly PartPoint[], name: string): [number, number][] =>
  points
    .filter((point) => point.name === name)
    .flatMap(({ tsUtcSeconds, values }) =>
      [...values].map((each, i): [number, number] => [tsUtcSeconds[i] as number, each]),
    );

/** The arrays of a part are good until the next: their readings are taken at once. */
async function replayed(held: HeldParts): Promise<{ names: string[]; readings: Map<string, [number, number][]> }> {
  const names: string[] = [];
  const readings = new Map<string, [number, number][]>();
  for await (const { points, isFirst } of held.replay(RESULT)) {
    const [name] = new Set(points.map((point) => point.name));
    expect(isFirst).toBe(names.length === 0);
    names.push(name as string);
    readings.set(name as string, readingsOf(points, name as string));
  }
  return { names, readings };
}

test("gives each point once, with its readings of all parts in the order of the parts", async () => {
  await fc.assert(
    fc.asyncProperty(made, async (parts) => {
      const held = new HeldParts();
      const given = parts.map(([at, columns], k) => partOf(at, columns, k === 0));
      for (const part of given) held.add(part);
      const all = given.flatMap(({ points }) => points);
      const { names, readings } = await replayed(held);
      expect(names).toEqual([...new Set(all.map(({ name }) => name))]);
      for (const name of names) expect(readings.get(name)).toEqual(readingsOf(all, name));
    }),
    { numRuns: 200, seed: 4 },
  );
});

test("a file that is begun anew leaves nothing of its first reading", async () => {
  const held = new HeldParts();
  held.add(partOf([1, 2], [[1, 2], null, null], true));
  held.add(partOf([3], [null, [5], null], true));
  expect((await replayed(held)).names).toEqual(["SP"]);
});

test("values are packed by how they are written, to the last bit, or not at all", () => {
  const number = fc.integer({ min: -40_000_000, max: 40_000_000 });
  fc.assert(
    fc.property(
      fc.array(number),
      fc.integer({ min: 0, max: 4 }),
      fc.integer({ min: 0, max: 2 }),
      (wholes, own, more) => {
        const values = Float64Array.from(wholes, (whole) => whole / 10 ** own);
        const decimals = own + more;
        const [lowest, highest] = [Math.min(...values), Math.max(...values)];
        const pack = packWritten(values, { decimals, lowest, highest }, new Slabs());
        const fits = decimals <= 3 && Math.max(highest, -lowest) * 10 ** decimals < 2 ** 31 - 1;
        expect(pack !== null).toBe(fits);
        if (!pack) return;
        const back = new Float64Array(values.length);
        unpackValues([pack], back);
        expect(back).toEqual(values);
      },
    ),
    { numRuns: 300, seed: 6 },
  );
});

/** A cell as a control system writes it: mostly alike, now and then with other decimals, very large, or empty. */
const cell = fc.oneof(
  { weight: 30, arbitrary: fc.integer({ min: 600, max: 820 }).map((tenths) => (tenths / 10).toFixed(1)) },
  { weight: 2, arbitrary: fc.integer({ min: -9e7, max: 9e7 }).map((number) => (number / 1e4).toFixed(4)) },
  { weight: 2, arbitrary: fc.integer({ min: -500, max: 500 }).map(String) },
  { weight: 1, arbitrary: fc.constant("") },
);
const stampAt = (i: number): string =>
  new Date(Date.UTC(2026, 5, 1) + i * 900_000).toISOString().slice(0, 16).replace("T", " ");
const wide = (rows: readonly (readonly string[])[]): string =>
  ["Time,VAV-1 flow,VAV-2 flow", ...rows.map((cells, i) => [stampAt(i), ...cells].join(","))].join("\n");
const long = (rows: readonly (readonly string[])[]): string =>
  [
    "Time,Point,Value",
    ...rows.flatMap((cells, i) => cells.map((text, k) => `${stampAt(i)},VAV-${k + 1} flow,${text}`)),
  ].join("\n");

test.each([
  ["wide", wide],
  ["long", long],
])("a %s file read in parts and held gives what reading it gives", async (_, textOf) => {
  await fc.assert(
    fc.asyncProperty(fc.array(fc.tuple(cell, cell), { minLength: 150, maxLength: 260 }), async (rows) => {
      const bytes = new TextEncoder().encode(`${textOf(rows)}\n`);
      const input = { fileName: "flows.csv", timeZone: "America/Chicago", blockBytes: 2000 };
      const held = new HeldParts();
      await inspectTrendSource({ ...input, source: bytesInMemory(bytes) }, undefined, held);
      const { points } = await readTrendFile({ ...input, bytes });
      const { names, readings } = await replayed(held);
      expect(names.toSorted()).toEqual(points.map(({ name }) => name).toSorted());
      for (const { name, tsUtcSeconds, values } of points)
        expect(readings.get(name)).toEqual([...values].map((each, i) => [tsUtcSeconds[i], each]));
    }),
    { numRuns: 40, seed: 9 },
  );
});
