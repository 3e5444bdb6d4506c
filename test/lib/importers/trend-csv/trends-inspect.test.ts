import { fileURLToPath } from "node:url";
import { afterEach, expect, test, vi } from "vitest";
import { trendsInspect } from "@/app/_cli/commands/trends-inspect";
import { UsageError } from "@/app/_cli/usage";

const shape = (name: string): string =>
  fileURLToPath(new URL(`../../../../../shared/data/trend-shapes/${name}`, import.meta.url));

async function run(...args: string[]): Promise<{ code: number; printed: string }> {
  const write = vi.spyOn(process.stdout, "write").mockImplementation(() => true);
  const code = await trendsInspect(args);
  const printed = write.mock.calls.map(([text]) => String(text)).join("");
  write.mockRestore();
  return { code, printed };
}
afterEach(() => vi.restoreAllMocks());

const zone = ["--time-zone", "America/New_York"];

test("prints one object a file and ends with 0 when all are accepted", async () => {
  const { code, printed } = await run(
    shape("01-wide-units-in-header.csv"),
    shape("29-duplicate-rows.csv"),
    ...zone,
    "--json",
  );
  expect(code).toBe(0);
  const objects = printed
    .trim()
    .split("\n")
    .map((line) => JSON.parse(line));
  expect(objects.map(({ file, outcome }) => [file, outcome])).toEqual([
    ["01-wide-units-in-header.csv", "accept"],
    ["29-duplicate-rows.csv", "accept-with-findings"],
  ]);
  expect(objects[0].points[0]).toMatchObject({ name: "Zone 2-01 Temp", readings: 8, firstUtc: "2026-07-06T12:00:00Z" });
});

test("ends with 3 when something is asked and 0 once it is answered", async () => {
  const file = shape("13-date-order-cannot-be-known.csv");
  expect((await run(file, ...zone)).code).toBe(3);
  const answered = await run(file, ...zone, "--answer", "date-order=dmy");
  expect(answered.code).toBe(0);
  expect(JSON.parse(answered.printed).points[0].firstUtc).toBe("2026-04-03T12:00:00Z");
});

test("ends with 4 when any file is refused, and a zip shows the points of its members", async () => {
  expect((await run(shape("46-web-page-saved-as-csv.csv"), shape("01-wide-units-in-header.csv"), ...zone)).code).toBe(
    4,
  );
  const zip = await run(shape("35-zip-one-file-a-point.zip"), ...zone, "--json");
  expect(zip.code).toBe(0);
  expect(JSON.parse(zip.printed).points).toHaveLength(3);
});

test("a wrong call is a usage error", async () => {
  await expect(trendsInspect(zone)).rejects.toThrow(UsageError);
  await expect(trendsInspect([shape("01-wide-units-in-header.csv")])).rejects.toThrow(/--time-zone/);
  await expect(trendsInspect([shape("no-such-file.csv"), ...zone])).rejects.toThrow(/cannot be read/);
  await expect(trendsInspect([shape("01-wide-units-in-header.csv"), ...zone, "--answer", "unit=inch"])).rejects.toThrow(
    /inch/,
  );
});
