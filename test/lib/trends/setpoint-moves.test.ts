import { expect, test } from "vitest";
import { driftBack, setpointMoves } from "@/lib/trends/setpoint-moves";

const daysOf = (values: readonly number[]) => values.map((median, k) => ({ firstUtcSeconds: 1000 * k, median }));
const repeat = (value: number, count: number) => Array.from({ length: count }, () => value);

test("a setpoint that moves and stays is found on its first day, step by step", () => {
  const days = daysOf([...repeat(21.5, 10), ...repeat(22, 5), ...repeat(22.5, 20)]);
  expect(setpointMoves(days)).toEqual([
    { atUtcSeconds: 10_000, fromC: 21.5, toC: 22 },
    { atUtcSeconds: 15_000, fromC: 22, toC: 22.5 },
  ]);
});

test("an override of two days and trimming are no moves", () => {
  expect(setpointMoves(daysOf([...repeat(21.5, 10), 24, 24, ...repeat(21.5, 10)]))).toEqual([]);
  expect(setpointMoves(daysOf([...repeat(21.5, 10), ...repeat(21.8, 10)]))).toEqual([]);
  expect(setpointMoves(daysOf([21.5, 23, 21.5, 23, 21.5, 23, 21.5, 23]))).toEqual([]);
  expect(setpointMoves([])).toEqual([]);
});

test("a change that goes back is named by the day on which it went, half of the way or more", () => {
  const moves = setpointMoves(daysOf([...repeat(21.5, 6), ...repeat(23, 12), ...repeat(21.5, 6)]));
  const [up, down] = moves;
  if (!up) throw new Error("no move was found");
  expect(driftBack(up, moves)).toEqual(down);
  expect(down?.atUtcSeconds).toBe(18_000);
  const slight = setpointMoves(daysOf([...repeat(21.5, 6), ...repeat(23, 12), ...repeat(22.5, 6)]));
  expect(slight).toHaveLength(2);
  expect(driftBack(slight[0] as (typeof slight)[0], slight)).toBeNull();
});
