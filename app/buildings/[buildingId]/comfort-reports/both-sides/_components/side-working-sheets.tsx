import { WorkingSheet } from "@/app/_components/quantity/working-sheet";
import type { SideWorkings } from "@/lib/services/both-sides/workings";
import { FIGURE_WORDS, workingPath } from "../view-model";

type Props = { workings: SideWorkings; here: string; shiftK: number; buildingPath: string };

/** The four figures of one step, each with its working; the workings of their terms are pages of their own. */
export function SideWorkingSheets({ workings, here, shiftK, buildingPath }: Props) {
  return (Object.keys(workings) as (keyof SideWorkings)[]).map((figure) => (
    <section key={figure} aria-label={`${FIGURE_WORDS[figure]}, working`}>
      <h3>{FIGURE_WORDS[figure]}</h3>
      <WorkingSheet
        working={workings[figure]}
        buildingPath={buildingPath}
        further={{ page: workingPath(here, shiftK, figure), at: [], levels: 0 }}
      />
    </section>
  ));
}
