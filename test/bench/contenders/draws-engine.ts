import { assessBuilding, modelBuilding } from "@/lib/overcooling/assess-building";
import { contributionsTo, drawsNearMedian, spreadOf } from "@/lib/overcooling/calculation/contributions";
import { runStudy } from "@/lib/overcooling/calculation/study";
import { measuredBuilding } from "../data/measured-building";
import { contend } from "./contend";
import { medianRound } from "./cpu-time";

/** The draws of the cost as the product makes them. */
await contend<{ zones: number; rounds: number }>(async ({ zones, rounds }) => {
  const input = measuredBuilding(zones);
  const model = modelBuilding(input);
  const cells = model.headline.components.flatMap((each) => each.cells.map((cell) => cell.money));
  let p50 = Number.NaN;
  const draw = (): void => {
    const study = runStudy(model.kept, input);
    const total = study.draws(model.headline.total);
    p50 = spreadOf(total).p50;
    for (const each of model.kept) spreadOf(study.draws(each));
    const means = study.meansOver(drawsNearMedian(total), cells);
    contributionsTo(
      p50,
      means.map((mean, i) => ({ mean, varies: study.varies(cells[i] as (typeof cells)[number]) })),
    );
    study.tornado(model.headline.total);
  };
  // A server that has been up for a while has its code compiled.
  for (let i = 0; i < (zones < 1000 ? 12 : 2); i++) draw();
  const times = medianRound(rounds, draw);
  const whole = medianRound(Math.min(3, rounds), () => assessBuilding(input));
  return { ...times, p50, wholeMs: whole.ms };
});
