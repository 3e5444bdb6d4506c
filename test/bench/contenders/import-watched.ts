import { withContext } from "@/app/_cli/context";
import { importTrendFile } from "@/lib/services/trend-imports/import-file";
import { contend, timed } from "./contend";
import { outcomeOf, type ProductInput } from "./product-outcome";

/**
 * Files one after the other with stores that stay open, as the server's thread and the command that watches a folder take
 * them; the time is that of the last.
 */
await contend<ProductInput>(async ({ dataFolder, files }) => {
  process.env.SETPOINT_LEDGER_DATA = dataFolder;
  const rule = { acceptProposals: true, answers: {} };
  const done = await withContext(async (ctx) => {
    let last = { ms: 0, report: null as Awaited<ReturnType<typeof importTrendFile>> | null };
    for (const file of files) {
      const ms = await timed(async () => {
        last.report = await importTrendFile({ ...ctx, now: Date.now() }, 1, { name: file, bytes: file }, rule);
      });
      last = { ...last, ms };
    }
    return last;
  });
  if (!done.report) throw new Error("no file was given");
  return { ...outcomeOf(dataFolder, done.report), ms: done.ms };
});
