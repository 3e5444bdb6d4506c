import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { withContext } from "@/app/_cli/context";
import { seedDemoBuilding } from "@/db/seed/seed";
import { ensureAdministrator } from "@/lib/services/access/ensure-administrator";
import { submitDemoProposal } from "./demo-proposal";

/**
 * Makes a fresh data folder for the browser tests, empty or with the demo building and a proposal, and leaves the administrator's
 * sign-in beside it. Usage: tsx prepare-data.ts empty|demo FOLDER
 */
const [kind, folder] = process.argv.slice(2);
if ((kind !== "empty" && kind !== "demo") || !folder) throw new Error("usage: prepare-data.ts empty|demo FOLDER");

rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
process.env.SETPOINT_LEDGER_DATA = folder;
await withContext(async (ctx) => {
  if (kind === "demo") {
    await seedDemoBuilding({ db: ctx.db, trends: ctx.trends });
    await submitDemoProposal(ctx, 1);
  }
  const administrator = await ensureAdministrator(ctx);
  if (administrator.state !== "created") throw new Error("a fresh folder already had an administrator");
  writeFileSync(path.join(folder, "sign-in.json"), JSON.stringify(administrator));
});
