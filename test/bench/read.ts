import { decodeChunk } from "@/db/trends/decode";
import { encodeChunk } from "@/db/trends/encode";
import { openTrendStore } from "@/db/trends/store";
import type { TrendSlice } from "@/lib/trends/trend-store";
import { syntheticYear } from "../support/synthetic-trends";
import { medianMs, report } from "./stopwatch";

const FROM = 0;
const TO = 4_000_000_000;

/** Degree-hours of zone-years from the store against a bare loop over arrays, and the rate of unpacking. */
export async function benchRead(): Promise<void> {
  const zones = 20;
  const slices = [...syntheticYear({ zones, days: 365, seed: 1 })];
  const trends = openTrendStore(":memory:");
  await trends.write(slices, 1);
  const [air, setpoint] = [slices[0], slices[2]] as [TrendSlice, TrendSlice];

  const loopMs = await medianMs(200, () => degreeHours(air, setpoint));
  const zoneMs = await medianMs(100, () => zoneYear(trends, 1, 3));
  report("zone-year of degree-hours, bare loop", loopMs, `${degreeHours(air, setpoint).toFixed(2)} K·h`);
  report("zone-year from the store, two series", zoneMs, `${(zoneMs / loopMs).toFixed(1)} of the bare loop`);

  const allMs = await medianMs(10, async () => {
    for (let zone = 0; zone < zones; zone++) await zoneYear(trends, zone * 3 + 1, zone * 3 + 3);
  });
  report(`${zones} zone-years`, allMs, `${(allMs / zones).toFixed(2)} ms a zone`);

  const queries = Array.from({ length: 10_000 }, (_, i) => ({
    series: 1 + ((i * 7) % (zones * 3)),
    ts: (air.ts[0] ?? 0) + ((i * 7_919_117) % 31_000_000),
  }));
  report("10,000 point-in-time readings", await medianMs(5, () => trends.asOf(queries)), "in any order");
  trends.close();

  const part = { ts: air.ts.slice(0, 2688), v: air.v.slice(0, 2688), decimals: 3 };
  const chunk = encodeChunk(part);
  const many = (work: () => unknown) => () => {
    for (let i = 0; i < 1000; i++) work();
  };
  const decodeMs = await medianMs(
    5,
    many(() => decodeChunk(chunk)),
  );
  const encodeMs = await medianMs(
    5,
    many(() => encodeChunk(part)),
  );
  const rate = (ms: number) => `${((part.ts.length * 1000) / ms / 1000).toFixed(0)} M readings/s`;
  report(
    "unpacking 1,000 chunks of zone air",
    decodeMs,
    `${rate(decodeMs)}, ${(chunk.length / 2688).toFixed(2)} bytes`,
  );
  report("packing them", encodeMs, rate(encodeMs));
}

async function zoneYear(trends: ReturnType<typeof openTrendStore>, air: number, setpoint: number): Promise<number> {
  const read: TrendSlice[] = [];
  for await (const slice of trends.read([air, setpoint], FROM, TO)) read.push(slice);
  return degreeHours(read[0] as TrendSlice, read[1] as TrendSlice);
}

/** Degree-hours of zone air below a cooling setpoint that holds until its next change; quarter-hour intervals. */
function degreeHours(air: TrendSlice, setpoint: TrendSlice): number {
  let [sum, j] = [0, 0];
  for (let i = 0; i < air.ts.length; i++) {
    while (j + 1 < setpoint.ts.length && (setpoint.ts[j + 1] as number) <= (air.ts[i] as number)) j++;
    const below = (setpoint.v[j] as number) - (air.v[i] as number);
    if (below > 0) sum += below;
  }
  return (sum / 1000) * 0.25;
}
