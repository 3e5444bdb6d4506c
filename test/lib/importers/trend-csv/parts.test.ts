import { describe, expect, test } from "vitest";
import { readTrendFile } from "@/lib/importers/trend-csv/read-trend-file";
import type { TrendReading } from "@/lib/importers/trend-csv/trend-file";
import { readTrendShapes, type TrendShape } from "../../../support/trend-shapes";

/** A file read some hundred bytes at a time is the same file. */
const read = (shape: TrendShape, blockBytes?: number): Promise<TrendReading> =>
  readTrendFile({ fileName: shape.file, bytes: shape.bytes, ...shape.building, answers: shape.given, blockBytes });

const plain = ({ facts: _facts, points, ...rest }: TrendReading) => ({
  ...rest,
  points: points.map(({ tsUtcSeconds, values, ...point }) => ({
    ...point,
    ts: [...tsUtcSeconds],
    values: [...values],
  })),
});

describe("a file read in parts is the file read whole", () => {
  for (const shape of readTrendShapes()) {
    for (const blockBytes of [300, 700]) {
      test(`${shape.file}, ${blockBytes} bytes at a time`, async () => {
        expect(plain(await read(shape, blockBytes))).toEqual(plain(await read(shape)));
      });
    }
  }
});
