import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { withContext } from "@/app/_cli/context";
import { seedDemoBuilding } from "@/db/seed/seed";
import { ensureAdministrator } from "@/lib/services/access/ensure-administrator";
import { submitDemoProposal } from "./demo-proposal";
import { FIRST_YEAR, proofBuilding, secondYear } from "./second-year";

/**
 * Makes a fresh data folder for the browser tests and leaves the administrator's sign-in beside it: empty, with the demo
 * building and a proposal, or with a year of a few of its zones and files of the year after. Usage: tsx prepare-data.ts KIND FOLDER
 */
const [kind, folder] = process.argv.slice(2);
if (!["empty", "demo", "proof"].includes(kind ?? "") || !folder)
  throw new Error("usage: prepare-data.ts empty|demo|proof FOLDER");

rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
process.env.SETPOINT_LEDGER_DATA = folder;
await withContext(async (ctx) => {
  if (kind === "demo") {
    await seedDemoBuilding({ db: ctx.db, trends: ctx.trends });
    await submitDemoProposal(ctx, 1);
  }
  if (kind === "proof") {
    const made = proofBuilding();
    const scope = { span: FIRST_YEAR, zoneCodes: made.plans.map(({ code }) => code) };
    await seedDemoBuilding({ db: ctx.db, trends: ctx.trends, scope, made });
    const { trends, complaints, planted } = secondYear();
    writeFileSync(path.join(folder, "later-trends.csv"), trends);
    writeFileSync(path.join(folder, "later-complaints.csv"), complaints);
    writeFileSync(path.join(folder, "planted.json"), JSON.stringify(planted));
  }
  const administrator = await ensureAdministrator(ctx);
  if (administrator.state !== "created") throw new Error("a fresh folder already had an administrator");
  writeFileSync(path.join(folder, "sign-in.json"), JSON.stringify(administrator));
});
