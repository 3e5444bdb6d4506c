import { inTransaction, openAppDatabase } from "@/db/client";
import { holiday } from "@/db/schema/building";
import { insertTestBuilding } from "./test-building";

/*
 * A process for tests that end it in mid-write: adds ten holidays a transaction to the database given until it is
 * killed, and says `ready` when it begins.
 */
const db = openAppDatabase(process.argv[2] ?? "");
const buildingId = insertTestBuilding(db);
process.stdout.write("ready\n");
for (let batch = 0; ; batch++) {
  inTransaction(db, (tx) => {
    for (let i = 0; i < 10; i++)
      tx.insert(holiday)
        .values({ buildingId, date: `${batch}-${i}` })
        .run();
  });
}
