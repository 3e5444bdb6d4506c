import { PLANTED_CAUSES } from "@/db/seed/planted-causes";
import { diagnosesOf, madeBuilding } from "../support/made-building";
import { type Compared, confusionTable, plantedAgainstFound } from "../support/planted-against-found";

/** Least share of zones that must be right. */
const LEAST_RIGHT = 0.9;

/** `diagnosis [name ...]`: planted causes against what is said, for the demo building and for made ones by name. */
export async function benchDiagnosis(names: string[]): Promise<void> {
  print("demo building", plantedAgainstFound(PLANTED_CAUSES, await diagnosesOf()));
  const all: Compared[] = [];
  for (const name of names) {
    const made = madeBuilding(name);
    const compared = plantedAgainstFound(made.planted, await diagnosesOf(made));
    print(`made building ${name}`, compared);
    all.push(...compared);
  }
  if (names.length > 1) print(`${names.length} made buildings`, all);
}

function print(title: string, compared: readonly Compared[]): void {
  const share = compared.filter(({ right }) => right).length / compared.length;
  const holds = share >= LEAST_RIGHT && !compared.some(({ uselessSetpoint }) => uselessSetpoint);
  process.stdout.write(`\n== ${title}: ${holds ? "holds" : "MISSED"}\n${confusionTable(compared)}\n`);
  if (!holds) process.exitCode = 1;
}
