import { expect, test } from "vitest";
import type { ByteSource } from "@/lib/importers/trend-csv/byte-source";
import { readTrendParts } from "@/lib/importers/trend-csv/read-trend-parts";

/** A source as strict as a file: only whole bytes can be asked for. */
function strictSource(bytes: Uint8Array): ByteSource {
  const whole = (count: number): number => {
    if (!Number.isInteger(count) || count < 0) throw new RangeError(`${count} is no number of bytes`);
    return count;
  };
  return {
    size: bytes.length,
    read: (offset, length) => bytes.subarray(whole(offset), whole(offset) + whole(length)),
    readInto(offset, target) {
      const part = bytes.subarray(whole(offset), whole(offset) + whole(target.length));
      target.set(part);
      return part.length;
    },
  };
}

test("reads rows so wide that a block holds few of them", async () => {
  const columns = 900;
  const rows = 700;
  const lines = [`Time,${Array.from({ length: columns }, (_, k) => `VAV-${k} ZN-T (°F)`).join()}`];
  for (let row = 0; row < rows; row++) {
    const stamp = new Date(Date.UTC(2026, 6, 6) + row * 900_000).toISOString().slice(0, 19).replace("T", " ");
    // Rows of unlike length: their mean is no whole number.
    lines.push(`${stamp},${Array.from({ length: columns }, (_, k) => (k % 7 === row % 5 ? 71.25 : 72.5)).join()}`);
  }
  const source = strictSource(new TextEncoder().encode(`${lines.join("\n")}\n`));
  const parts = readTrendParts({ fileName: "wide.csv", source, timeZone: "America/Chicago", blockBytes: 1_300_000 });
  let readings = 0;
  let next = await parts.next();
  for (; !next.done; next = await parts.next()) for (const { values } of next.value.points) readings += values.length;
  expect(readings).toBe(columns * rows);
  expect(next.value.rows).toMatchObject({ rowsInFile: rows, accepted: rows });
});
