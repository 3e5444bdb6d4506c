import fc from "fast-check";
import { expect, test } from "vitest";
import { chunkCrc } from "@/db/trends/chunk-crc";
import { ChunkError, CRC_OFFSET, FLAG_DICTIONARY, KIND_GRID, KIND_STAMPED } from "@/db/trends/chunk-format";
import { decodeChunk } from "@/db/trends/decode";
import { encodeChunk } from "@/db/trends/encode";
import { ascendingRows, regular, rowsOf, slice, T0 } from "../../support/trend-samples";

const roundTrip = (rows: [number, number][], decimals = 1) => decodeChunk(encodeChunk(slice(1, rows, decimals)));

test("any samples come back as they were", () => {
  fc.assert(
    fc.property(ascendingRows, fc.nat({ max: 9 }), (rows, decimals) => {
      const back = roundTrip(rows, decimals);
      expect(rowsOf(back)).toEqual(rows);
      expect(back.decimals).toBe(decimals);
    }),
    { numRuns: 300, seed: 11 },
  );
});

test("jumps between the ends of 32 bits come back", () => {
  const [low, high] = [-2_147_483_648, 2_147_483_647];
  const rows = regular(T0, 900, 8, (i) => [low, high, 0, high, low, -1, low, 1][i] as number);
  expect(rowsOf(roundTrip(rows))).toEqual(rows);
  const even = regular(T0, 900, 3, (i) => [low, high - 1, low][i] as number);
  expect(rowsOf(roundTrip(even))).toEqual(even);
});

test("differences at every limit between token lengths come back", () => {
  for (const limit of [95, 96, 4191, 4192, 32_767, 32_768, 1_073_741_823, 1_073_741_824]) {
    for (const jump of [limit - 1, limit, limit + 1]) {
      const rows = regular(T0, 60, 4, (i) => [1, 1 + jump, 1, 2][i] as number);
      expect(rowsOf(roundTrip(rows))).toEqual(rows);
    }
  }
});

test("runs and gaps at every limit between token lengths come back", () => {
  for (const n of [1, 2, 3, 12, 13, 17, 18, 19, 127, 128, 129, 16_383, 16_384]) {
    const run = regular(T0, 60, n + 2, (i) => (i > n ? 8 : 7));
    expect(rowsOf(roundTrip(run))).toEqual(run);
    const gap: [number, number][] = [...regular(T0, 60, 9, (i) => i % 2), [T0 + (8 + n + 1) * 60, 5]];
    expect(rowsOf(roundTrip(gap))).toEqual(gap);
  }
});

test("a regular record is kept as a grid and a change-of-value record with its times", () => {
  expect(
    encodeChunk(
      slice(
        1,
        regular(T0, 900, 100, (i) => i % 3),
      ),
    )[1],
  ).toBe(KIND_GRID);
  expect(
    encodeChunk(
      slice(1, [
        [T0, 1],
        [T0 + 7, 2],
        [T0 + 5003, 1],
        [T0 + 9001, 3],
      ]),
    )[1],
  ).toBe(KIND_STAMPED);
});

/*
 * Put together by hand from the table of chunk-format.ts; the checksum by Python 3.11, zlib.crc32(b[:20] + b[24:]).
 * Grid of 900 s from 2024-01-01T00:00:00Z, 1 decimal: 21.5, 21.6, (2 slots empty), 21.4, 21.4, 21.4, 21.4, 121.4.
 */
const WORKED_BY_HAND =
  "01000100" +
  "84030000" +
  "07000000" +
  "80009265" +
  "00000000" +
  "CRCCRCCR" +
  "d7000000" +
  "01000000" +
  "00000000" +
  "00000000" +
  "06000000" +
  "02" + // + 1
  "e5" + // 2 empty slots
  "03" + // - 2
  "f1" + // 3 differences of 0
  "c7" +
  "10"; // + 1000: z = 2000 = 192 + 256 * 7 + 16

test("a chunk put together by hand from the description reads as described, and is what the encoder writes", () => {
  const chunk = Buffer.from(WORKED_BY_HAND.replace("CRCCRCCR", "00000000"), "hex");
  chunk.writeUInt32LE(0xbbc896f9, CRC_OFFSET);
  const rows: [number, number][] = [
    [T0, 215],
    [T0 + 900, 216],
    [T0 + 3600, 214],
    [T0 + 4500, 214],
    [T0 + 5400, 214],
    [T0 + 6300, 214],
    [T0 + 7200, 1214],
  ];
  expect(rowsOf(decodeChunk(chunk))).toEqual(rows);
  expect(encodeChunk(slice(1, rows)).toString("hex")).toBe(chunk.toString("hex"));
});

test("values on an uneven scale are kept by a dictionary in about a byte each, and come back", () => {
  const tenthsF = regular(T0, 900, 2688, (i) => Math.round(715 + 25 * Math.sin(i / 15) + (i % 3)));
  const rows = tenthsF.map(([ts, f]): [number, number] => [ts, Math.round(((f / 10 - 32) / 1.8) * 1000)]);
  const chunk = encodeChunk(slice(1, rows, 3));
  expect((chunk[3] ?? 0) & FLAG_DICTIONARY).toBe(FLAG_DICTIONARY);
  expect(chunk.length / rows.length).toBeLessThan(1.1);
  expect(rowsOf(decodeChunk(chunk))).toEqual(rows);
});

test("dictionaries of any values come back, to the ends of 32 bits, on a grid and with odd times", () => {
  const scale = fc.array(fc.integer({ min: -2_147_483_648, max: 2_147_483_647 }), { minLength: 2, maxLength: 20 });
  fc.assert(
    fc.property(scale, fc.array(fc.nat(), { minLength: 100, maxLength: 200 }), fc.boolean(), (values, picks, odd) => {
      const ends = [-2_147_483_648, 2_147_483_647, ...values];
      const rows = picks.map((pick, i): [number, number] => [
        T0 + i * 900 + (odd ? pick % 800 : 0),
        ends[pick % ends.length] as number,
      ]);
      const chunk = encodeChunk(slice(1, rows));
      expect((chunk[3] ?? 0) & FLAG_DICTIONARY).toBe(FLAG_DICTIONARY);
      expect(rowsOf(decodeChunk(chunk))).toEqual(rows);
    }),
    { numRuns: 100, seed: 8 },
  );
});

test("a change of any byte is noticed", () => {
  const chunk = encodeChunk(
    slice(
      1,
      regular(T0, 900, 60, (i) => 210 + ((i * i) % 7)),
    ),
  );
  for (let i = 0; i < chunk.length; i++) {
    const damaged = Buffer.from(chunk);
    damaged[i] = (chunk[i] ?? 0) ^ 0x20;
    expect(() => decodeChunk(damaged), `byte ${i}`).toThrow(ChunkError);
  }
  expect(() => decodeChunk(chunk.subarray(0, chunk.length - 1))).toThrow("checksum");
  expect(() => decodeChunk(chunk.subarray(0, 20))).toThrow("cut off");
});

test("a status section is passed over", () => {
  const rows = regular(T0, 900, 20, (i) => i);
  const chunk = Buffer.concat([encodeChunk(slice(1, rows)), Buffer.from([1, 4, 2, 9])]);
  chunk[3] = 1;
  chunk.writeUInt32LE(chunkCrc(chunk), CRC_OFFSET);
  expect(rowsOf(decodeChunk(chunk))).toEqual(rows);
});

test("a newer format is told from damage", () => {
  const chunk = encodeChunk(slice(1, [[T0, 1]]));
  chunk[0] = 2;
  expect(() => decodeChunk(chunk)).toThrow("has format 2; this program reads 1");
});
