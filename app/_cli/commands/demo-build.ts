import { seedDemoBuilding } from "@/db/seed/seed";
import { ensureAdministrator } from "@/lib/services/access/ensure-administrator";
import { readBuildings } from "@/lib/services/buildings/find";
import { withContext } from "../context";
import { printSignIn } from "./access";

/** Makes the demo building in an empty data folder, and the administrator on the first run. */
export async function demoBuild(): Promise<number> {
  return withContext(async (ctx) => {
    if (readBuildings(ctx).length === 0) {
      process.stdout.write("Making the demo building: a year of 15-minute trends, devices and comfort reports...\n");
      await seedDemoBuilding({ db: ctx.db, trends: ctx.trends });
    }
    const administrator = await ensureAdministrator(ctx);
    if (administrator.state === "created") printSignIn(administrator);
    else {
      process.stdout.write(
        "The demo building is there already. Sign in with the password printed when it was made, or make a new one:\n" +
          "  SETPOINT_LEDGER_DATA=data/demo npm run cli -- access reset\n",
      );
    }
    return 0;
  });
}
