import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { printCircumstances } from "./circumstances";
import { type Outcome, runContender } from "./contender";
import { type FitInput, writeMeterYears } from "./data/meter-years";
import { median } from "./median";
import { line, target, unmeasured } from "./targets";

type FitOutcome = Outcome & { sse: (number | null)[] };

/** Errors that differ by less than this share are those of the same optimum. */
const SAME = 1e-9;

/**
 * 5P of 200 hourly years beside scipy: an optimum no worse than either of its ways, in no more time than the one that
 * looks for the global optimum as well. `--quick`: 20 meters, one round.
 */
export async function benchFit(args: string[]): Promise<void> {
  printCircumstances();
  const quick = args.includes("--quick");
  const folder = mkdtempSync(path.join(tmpdir(), "fit-bench-"));
  try {
    const input: FitInput = { file: path.join(folder, "meters.f64"), meters: quick ? 20 : 200, points: 8760 };
    writeMeterYears(input);
    line(`\n5P of ${input.meters} meters of ${input.points} hours, half of them with temperatures in tenths`);
    const [ours, grid, descent]: [FitOutcome[], FitOutcome[], FitOutcome[]] = [[], [], []];
    let reason = "";
    for (let round = 0; round < (quick ? 1 : 3); round++) {
      ours.push(await runContender<FitOutcome>("fit-product", input));
      for (const [method, all] of [
        ["grid", grid],
        ["descent", descent],
      ] as const) {
        const peer = await runContender<FitOutcome>("fit-scipy", { ...input, method }).catch((error: Error) => error);
        if (peer instanceof Error) reason = peer.message.split("\n").slice(-8).join(" ");
        else all.push(peer);
      }
    }
    report(ours, { grid, descent }, reason);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function report(ours: FitOutcome[], theirs: { grid: FitOutcome[]; descent: FitOutcome[] }, reason: string): void {
  const figures = (name: string, all: FitOutcome[]): void =>
    line(
      `  ${name.padEnd(34)} ${median(all.map((each) => each.ms))
        .toFixed(0)
        .padStart(7)} ms, processor ${median(all.map((each) => each.cpuMs)).toFixed(0)} ms`,
    );
  figures("the product", ours);
  const names = { grid: "scipy: grid and Nelder-Mead", descent: "scipy: curve_fit" } as const;
  for (const method of ["grid", "descent"] as const) {
    const all = theirs[method];
    if (all.length === 0) {
      unmeasured(`5P / ${names[method]}`, `python3 with numpy and scipy did not run: ${reason}`);
      continue;
    }
    figures(names[method], all);
    const pairs = (ours[0]?.sse ?? []).map((own, i) => [own ?? Infinity, all[0]?.sse[i] ?? Infinity] as const);
    const worse = pairs.filter(([own, other]) => own > other * (1 + SAME)).length;
    const better = pairs.filter(([own, other]) => own < other * (1 - SAME)).length;
    line(`    ${better} of ${pairs.length} meters with a better optimum than it finds, ${worse} with a worse one`);
    target({ what: `worse optimum than ${names[method]}`, figure: worse, limit: 0, unit: "meters" });
    const ratio = median(ours.map((each, i) => each.ms / (all[i]?.ms ?? Number.NaN)));
    if (method === "grid") target({ what: `5P / ${names[method]}`, figure: ratio, limit: 1, unit: "of its time" });
    else
      line(
        `    5P takes ${ratio.toFixed(2)} of its time: no limit, since a descent stops at the first optimum it meets`,
      );
  }
}
