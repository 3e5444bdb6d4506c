import { assessBuilding } from "@/lib/overcooling/assess-building";
import { office } from "../lib/overcooling/offices";
import { medianMs, report } from "./stopwatch";

/** One assessment of 36 zones with 5,000 draws, against a bare loop that multiplies and adds as many drawn cells. */
export async function benchAssess(): Promise<void> {
  const input = office();
  const cells = input.zones.length * 8 * input.draws;
  const bareMs = await medianMs(10, () => bareLoop(cells));
  const assessMs = await medianMs(5, () => assessBuilding(input));
  report("bare loop over the drawn cells", bareMs, `${(cells / 1e6).toFixed(2)} M cells`);
  report(
    `assessment, ${input.zones.length} zones, ${input.draws} draws`,
    assessMs,
    `${(assessMs / bareMs).toFixed(0)} of the bare loop`,
  );
}

function bareLoop(cells: number): number {
  const values = new Float64Array(cells);
  let sum = 0;
  for (let i = 0; i < cells; i++) {
    values[i] = i * 1.0001 + sum * 1e-12;
    sum += values[i] as number;
  }
  return sum;
}
