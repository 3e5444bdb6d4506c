import { seasonModel } from "@/lib/comfort-reports/both-sides/season-record";
import { ALL_YEAR } from "@/lib/proposals/acting-window";
import { costCurve } from "@/lib/proposals/live/cost-curve";
import { livePicture } from "@/lib/proposals/live/live-picture";
import { liveBuilding, liveZone } from "../factories/live-building";
import { median } from "./median";
import { line, target } from "./targets";

/** Limit of a slider's move [ms]: what a reader takes for at once. The page draws in the rest of it. */
const LIMIT_MS = 100;
const ROUNDS = 30;

/** Time of what a move of a slider works out on 60 zones with 300 draws: the picture and the cost curve. */
export async function benchProposal(): Promise<void> {
  const zones = Array.from({ length: 60 }, (_, k) => liveZone({ zoneId: k + 1, code: `Z-${k + 1}` }));
  const made = liveBuilding(zones);
  for (const value of Object.values(made.shared))
    value.draws = Array.from({ length: 300 }, (_, k) => value.term.value * (0.9 + (0.2 * k) / 300));
  const timeOf = (work: (amount: number) => unknown): number =>
    median(
      Array.from({ length: ROUNDS }, (_, k) => {
        const from = performance.now();
        work(0.1 * k + 0.1);
        return performance.now() - from;
      }),
    );
  const from = performance.now();
  if (made.reports) seasonModel(made.reports);
  line(`fit of expected reports, once a page: ${(performance.now() - from).toFixed(0)} ms`);
  const levers = (amount: number) =>
    zones.flatMap(({ zoneId }) => [
      { zoneId, lever: "cooling-setpoint" as const, amount },
      { zoneId, lever: "minimum-airflow" as const, amount: 40 },
    ]);
  const picture = timeOf((amount) => livePicture(made, levers(amount), ALL_YEAR));
  const curve = timeOf((amount) => costCurve(made, levers(amount), ALL_YEAR));
  line(`picture ${picture.toFixed(1)} ms, curve ${curve.toFixed(1)} ms, 60 zones, median of ${ROUNDS} moves`);
  target({ what: "a move of a slider, picture and curve", figure: picture + curve, limit: LIMIT_MS, unit: "ms" });
}
