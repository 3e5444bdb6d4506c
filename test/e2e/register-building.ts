import path from "node:path";
import { eq } from "drizzle-orm";
import { openAppDatabase } from "@/db/client";
import { building } from "@/db/schema/building";
import { createBuilding } from "@/lib/services/buildings/save";
import type { Context } from "@/lib/services/context";
import { addZone } from "@/lib/services/zones/save";
import { buildingInputOf } from "../factories/building";
import { testContext } from "../support/database";
import { baseUrl, SERVERS } from "../support/servers";

export type RegisterBuilding = {
  ctx: Context;
  id: number;
  zoneId: number;
  address: (path: string) => string;
  remove(): void;
};

/** A building of its own beside the demo, in the running server's database; `remove` takes it away with all that hangs on it. */
export function registerBuilding(name: string): RegisterBuilding {
  const ctx = testContext({ db: openAppDatabase(path.join(SERVERS.demo.dataFolder, "app.db")), now: Date.now() });
  const id = createBuilding(ctx, buildingInputOf({ name }));
  const zoneId = addZone(ctx, id, { code: "1-01" });
  return {
    ctx,
    id,
    zoneId,
    address: (place) => `${baseUrl("demo")}/buildings/${id}${place}`,
    remove() {
      ctx.db.delete(building).where(eq(building.id, id)).run();
      ctx.db.$client.close();
    },
  };
}
