import path from "node:path";
import type { Page } from "@playwright/test";
import Database from "better-sqlite3";
import { baseUrl, SERVERS } from "../support/servers";
import { bringIn } from "./bring-in";
import { beSignedIn } from "./fixtures";
import { CHICAGO_OFFICE, fillFields } from "./set-up-building";

/** A building on the empty server with one floor of desks, 2-14-01 and so on. Returns its address. */
export async function officeOfDesks(page: Page, name: string, desks: number): Promise<string> {
  await beSignedIn(page, "empty");
  await page.goto(`${baseUrl("empty")}/buildings/new`);
  await fillFields(page, { ...CHICAGO_OFFICE, Name: name });
  await page.getByRole("button", { name: "Set up the building" }).click();
  await page.waitForURL(/\/buildings\/\d+\/imports$/);
  const address = page.url().replace(/\/imports$/, "");
  const codes = Array.from({ length: desks }, (_, at) => `2-14-${String(at + 1).padStart(2, "0")}`);
  await bringIn(page, "Zones (CSV)", csv("zones.csv", ["zone,name,floor", "2-14,Open office,2"]));
  await page.goto(`${address}/imports`);
  await bringIn(page, "Desks (CSV)", csv("desks.csv", ["desk,zone", ...codes.map((code) => `${code},2-14`)]));
  return address;
}

const csv = (name: string, lines: readonly string[]) => ({
  name,
  mimeType: "text/csv",
  buffer: Buffer.from(`${lines.join("\n")}\n`),
});

/** Entries by desk of a building's walks, as they lie in the database of the empty server. */
export function storedEntries(buildingId: number): Record<string, number> {
  const db = new Database(path.join(SERVERS.empty.dataFolder, "app.db"), { readonly: true });
  try {
    const rows = db
      .prepare<[number], { code: string; entries: number }>(
        `select d.code, count(*) as entries from walk_entry e join desk d on d.id = e.desk_id
         where d.building_id = ? group by d.code order by d.code`,
      )
      .all(buildingId);
    return Object.fromEntries(rows.map(({ code, entries }) => [code, entries]));
  } finally {
    db.close();
  }
}
