import { expect, it } from "vitest";
import { diagnosesOf, madeBuilding } from "@/test/support/made-building";
import { confusionTable, plantedAgainstFound } from "@/test/support/planted-against-found";

// Nothing was tuned on it: more of the kind by `npm run bench -- diagnosis NAME ...`.
it("finds nine of ten causes in a made building, and proposes no setpoint where it is useless", async () => {
  const made = madeBuilding("K");
  const compared = plantedAgainstFound(made.planted, await diagnosesOf(made));
  const table = confusionTable(compared);
  process.stdout.write(`${table}\n`);
  expect(compared.length).toBe(36);
  expect(new Set(compared.map(({ planted }) => planted)).size, "causes planted").toBeGreaterThanOrEqual(9);
  expect(compared.filter(({ right }) => right).length, table).toBeGreaterThanOrEqual(0.9 * compared.length);
  expect(
    compared.filter(({ uselessSetpoint }) => uselessSetpoint),
    table,
  ).toEqual([]);
}, 120_000);
