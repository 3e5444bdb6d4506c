import { modelBuilding } from "@/lib/overcooling/assess-building";
import { runStudy } from "@/lib/overcooling/calculation/study";
import { quantilesBySelection } from "@/lib/statistics/select";
import { plantedBuilding } from "./data/planted-building";
import { line, target } from "./targets";

const BUILDINGS = 1000;

/**
 * How often the cost's 90 % interval (P5 to P95) and the 80 % range that the pages show hold the planted truth, over
 * seeded invented buildings. What the truth is drawn from stands in `plantedBuilding`.
 */
export async function benchCoverage(): Promise<void> {
  let [in90, in80, below] = [0, 0, 0];
  for (let number = 0; number < BUILDINGS; number++) {
    const { seen, truth } = plantedBuilding(number);
    const model = modelBuilding(seen);
    const total = runStudy([model.headline.total], seen).draws(model.headline.total);
    const [p5, p10, p90, p95] = quantilesBySelection(total, [0.05, 0.1, 0.9, 0.95]) as [number, number, number, number];
    const actual = modelBuilding(truth).headline.total;
    const cost = runStudy([actual], truth).stated(actual);
    if (cost >= p5 && cost <= p95) in90++;
    if (cost >= p10 && cost <= p90) in80++;
    if (cost < p5) below++;
  }
  const share = (count: number): number => (100 * count) / BUILDINGS;
  line(`${BUILDINGS} buildings; a share of 90 % is known to 0.9 % either way (standard error of so many)`);
  line(
    `truth below the 90 % interval ${share(below).toFixed(1)} %, above it ${share(BUILDINGS - in90 - below).toFixed(1)} %`,
  );
  target({ what: "90 % intervals that hold the truth", figure: share(in90), limit: 88, atLeast: true, unit: "%" });
  target({ what: "90 % intervals that hold the truth", figure: share(in90), limit: 92, unit: "%" });
  line(`80 % ranges that hold the truth: ${share(in80).toFixed(1)} %`);
}
