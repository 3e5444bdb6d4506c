import type { FileImport } from "@/lib/services/trend-imports/import-file";
import { importByCommand } from "../import-command";
import { contend, timed } from "./contend";
import { outcomeOf, type ProductInput } from "./product-outcome";

/** Files through the command line's import, one command each; the time is that of the last. */
await contend<ProductInput>(async ({ dataFolder, files }) => {
  let ms = 0;
  let report = {} as FileImport;
  for (const file of files) {
    ms = await timed(async () => {
      report = await importByCommand(dataFolder, file);
    });
  }
  return { ...outcomeOf(dataFolder, report), ms };
});
