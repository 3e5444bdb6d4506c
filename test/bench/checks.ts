import { comfortCheckLines, comfortCheckTable } from "../support/comfort-checks";
import { line, target } from "./targets";

/** The checks of the comfort engine against figures from outside: number, worst deviation against its tolerance, source. */
export async function benchChecks(): Promise<void> {
  line(comfortCheckTable());
  const worst = Math.max(...comfortCheckLines().map((each) => each.worst?.share ?? 0));
  target({ what: "the worst deviation of all, of its tolerance", figure: 100 * worst, limit: 100, unit: "%" });
}
