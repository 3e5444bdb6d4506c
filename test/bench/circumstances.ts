import { cpus, loadavg, totalmem } from "node:os";
import { line } from "./targets";

/** Says on what the figures were measured: a busy machine's times are worth less than its ratios. */
export function printCircumstances(): void {
  const load = loadavg()
    .map((each) => each.toFixed(1))
    .join(" ");
  line(
    `Node ${process.version}, ${cpus().length} cores, ${(totalmem() / 2 ** 30).toFixed(0)} GiB; load before the run ${load} (1, 5, 15 min).`,
  );
  if ((loadavg()[0] as number) > cpus().length)
    line("The machine has more to do than cores: times of this run are no verdict, ratios a weak one.");
  line(
    "Contenders take turns, each in a process of its own; figures are medians over the rounds, ratios are medians of the\nrounds' ratios. Other work on the machine moves times up to threefold: trust the ratios of one run.",
  );
}
