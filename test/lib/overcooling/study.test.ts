import { expect, test } from "vitest";
import { contributionsTo, drawsNearMedian, spreadOf } from "@/lib/overcooling/calculation/contributions";
import { exact, type Input, step, sum } from "@/lib/overcooling/calculation/quantity";
import { runStudy } from "@/lib/overcooling/calculation/study";
import { tornadoLines } from "@/lib/overcooling/calculation/tornado";

const uncertain = (id: string, [low, value, high]: [number, number, number], group = id): Input => ({
  ...exact({ symbol: id, label: id, unit: "", value, origin: "default" }),
  id,
  group: { id: group, label: group },
  low,
  high,
});
const plus = (...parts: Input[]) =>
  sum({
    symbol: "S",
    label: "sum",
    unit: "",
    formula: "S = sum of the parts",
    parts: parts.map((each) => ({ symbol: each.symbol, label: each.label, quantity: each })),
  });

test("inputs of different ids are drawn independently of each other", () => {
  const [a, b] = [uncertain("a", [0, 1, 2]), uncertain("b", [0, 1, 2])];
  const study = runStudy([a, b], { seed: 3, draws: 5000 });
  const [x, y] = [study.draws(a), study.draws(b)];
  let products = 0;
  x.forEach((each, i) => {
    products += (each - 1) * ((y[i] as number) - 1);
  });
  // Variance of this triangular is 1/6; the standard error of the correlation is 1/√5000 = 0.014.
  expect(Math.abs(products / 5000 / (1 / 6))).toBeLessThan(0.05);
});

test("an input keeps its draws whatever else is in the study, and changes them with the seed", () => {
  const a = uncertain("a", [0, 1, 4]);
  const alone = Array.from(runStudy([a], { seed: 3, draws: 300 }).draws(a));
  const among = runStudy([plus(uncertain("z", [0, 1, 2]), a), a], { seed: 3, draws: 300 });
  expect(Array.from(among.draws(a))).toEqual(alone);
  expect(Array.from(runStudy([a], { seed: 4, draws: 300 }).draws(a))).not.toEqual(alone);
});

test("draws follow the triangular distribution", () => {
  const a = uncertain("a", [0, 1, 4]);
  const draws = runStudy([a], { seed: 1, draws: 20_000 }).draws(a);
  // Mean (0 + 1 + 4) / 3; a quarter of the mass lies below the mode.
  expect(draws.reduce((total, each) => total + each, 0) / 20_000).toBeCloseTo(5 / 3, 1);
  expect(draws.filter((each) => each < 1).length / 20_000).toBeCloseTo(0.25, 1);
});

test("two inputs of one id are refused, since they would share their draws", () => {
  const total = plus(uncertain("a", [0, 1, 2]), uncertain("a", [0, 1, 3]));
  expect(() => runStudy([total], { seed: 1, draws: 10 })).toThrow(/two inputs have the id "a"/);
});

test("the tornado moves one input at a time, and adds independent ones of a group as squares", () => {
  const total = plus(uncertain("a", [0, 10, 30]), uncertain("b", [7, 10, 14], "g"), uncertain("c", [6, 10, 13], "g"));
  const lines = runStudy([total], { seed: 1, draws: 10 }).tornado(total);
  // By hand: a takes 30 to 20 and 50; b and c together to 30 - √(3² + 4²) and 30 + √(4² + 3²).
  expect(lines).toEqual([
    { id: "a", label: "a", inputs: 1, lowTotal: 20, highTotal: 50 },
    { id: "g", label: "g", inputs: 2, lowTotal: 25, highTotal: 35 },
  ]);
  expect(tornadoLines(5, [{ group: { id: "x", label: "x" }, low: 5, high: 5 }])).toEqual([]);
});

test("the tornado of inputs that reach far is that of moving each by itself", () => {
  // 200 zones: each has an input of its own and shares the sum of all of them, so that every input moves every zone; and
  // 600 inputs of 1 that move nothing but the total.
  const zones = 200;
  const apart = Array.from({ length: 600 }, (_, k) => uncertain(`o${k}`, [0, 1, 3], "apart"));
  const own = Array.from({ length: zones }, (_, k) => uncertain(`z${k}`, [1, 2 + (k % 5), 9], "zone"));
  const shared = uncertain("s", [0.5, 1, 4]);
  const all = plus(...own);
  const cell = (each: Input) =>
    step({
      symbol: "c",
      label: "cell",
      unit: "",
      formula: "c = s * z^2 / S",
      terms: [shared, each, all],
      compute: (factor, value, total) => (factor * value * value) / total,
    });
  const total = sum({
    symbol: "T",
    label: "total",
    unit: "",
    formula: "T = sum of the cells",
    parts: [...own.map(cell), ...apart].map((quantity) => ({ symbol: "c", label: quantity.label, quantity })),
  });
  const byHand = (values: number[], factor: number): number =>
    600 + (factor * values.reduce((sum, each) => sum + each ** 2, 0)) / values.reduce((sum, each) => sum + each, 0);
  const stated = own.map((each) => each.value);
  const base = byHand(stated, 1);
  const root = (end: "low" | "high"): number =>
    Math.sqrt(
      own.reduce((sum, each, k) => {
        const values = stated.with(k, each[end]);
        return sum + (byHand(values, 1) - base) ** 2;
      }, 0),
    );
  const lines = runStudy([total], { seed: 1, draws: 10 }).tornado(total);
  const line = (id: string) => lines.find((each) => each.id === id);
  expect(line("s")?.lowTotal).toBeCloseTo(600 + 0.5 * (base - 600), 9);
  expect(line("s")?.highTotal).toBeCloseTo(600 + 4 * (base - 600), 9);
  expect(line("apart")).toMatchObject({
    inputs: 600,
    lowTotal: base - Math.sqrt(600),
    highTotal: base + Math.sqrt(2400),
  });
  expect(line("zone")?.inputs).toBe(zones);
  expect(line("zone")?.lowTotal).toBeCloseTo(base - root("low"), 9);
  expect(line("zone")?.highTotal).toBeCloseTo(base + root("high"), 9);
});

const meanOver = (values: Float64Array, draws: Int32Array): number =>
  draws.reduce((total, i) => total + (values[i] as number), 0) / draws.length;

test("parts of the median come from the draws near it alone", () => {
  // 1,001 totals 0 to 1000. Below rank 450 and above rank 550 all of it is the second part's; between, the first's.
  const total = Float64Array.from({ length: 1001 }, (_, i) => i);
  const first = total.map((each) => (each >= 450 && each <= 550 ? each : 0));
  const second = total.map((each, i) => each - (first[i] as number));
  const near = drawsNearMedian(total);
  const parts = [first, second].map((each) => ({ mean: meanOver(each, near), varies: true }));
  const [a, b] = contributionsTo(spreadOf(total).p50, parts) as [number, number];
  expect(a).toBeCloseTo(500, 9);
  expect(b).toBeCloseTo(0, 9);
});

test("what the window leaves over goes to the uncertain parts, and an exact part keeps its figure", () => {
  const uneven = Float64Array.from({ length: 1001 }, (_, i) => (i / 1000) ** 4);
  const total = uneven.map((each) => each + 2);
  const parts = contributionsTo(spreadOf(total).p50, [
    { mean: meanOver(uneven, drawsNearMedian(total)), varies: true },
    { mean: 2, varies: false },
  ]);
  expect(parts[1]).toBe(2);
  expect((parts[0] as number) + 2).toBeCloseTo(2 + 0.5 ** 4, 12);
});

test("draws asked for by number are those of the whole study, whatever blocks they fall in", () => {
  const [a, b] = [uncertain("a", [0, 1, 4]), uncertain("b", [2, 3, 9])];
  const product = step({
    symbol: "p",
    label: "product",
    unit: "",
    formula: "p = a * b",
    terms: [a, b],
    compute: (x, y) => x * y,
  });
  const total = plus(a, b, exact({ symbol: "c", label: "c", unit: "", value: 5, origin: "entered" }));
  const study = runStudy([product, total, a, b], { seed: 9, draws: 1300 });
  const [x, y] = [study.draws(a), study.draws(b)];
  expect(Array.from(study.draws(product))).toEqual(Array.from(x, (each, i) => each * (y[i] as number)));
  study.draws(total).forEach((each, i) => {
    expect(each).toBeCloseTo(5 + (x[i] as number) + (y[i] as number), 12);
  });
  const some = Int32Array.of(1299, 3, 512, 511, 700);
  expect(study.meansOver(some, [product])[0]).toBeCloseTo(meanOver(study.draws(product), some), 12);
});

test("a quantity that is read in a sum, in steps and twice over keeps its value for all of them", () => {
  const a = uncertain("a", [0, 1, 4]);
  const twice = step({
    symbol: "t",
    label: "t",
    unit: "",
    formula: "t = a + a",
    terms: [a, a],
    compute: (x, y) => x + y,
  });
  const square = step({
    symbol: "q",
    label: "q",
    unit: "",
    formula: "q = t * a",
    terms: [twice, a],
    compute: (x, y) => x * y,
  });
  const total = sum({
    symbol: "S",
    label: "sum",
    unit: "",
    formula: "S = sum of the parts",
    parts: [twice, square, a, a].map((quantity, k) => ({ symbol: `s${k}`, label: "part", quantity })),
  });
  const study = runStudy([total, a], { seed: 2, draws: 600 });
  study.draws(a).forEach((each, i) => {
    expect(study.draws(total)[i]).toBeCloseTo(4 * each + 2 * each * each, 9);
  });
  // At its high end, by hand: 8 + 32 + 4 + 4.
  expect(study.tornado(total)[0]).toMatchObject({ lowTotal: 0, highTotal: 48 });
});
