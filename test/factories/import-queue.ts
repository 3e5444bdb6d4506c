import { updateImportRun } from "@/db/queries/import-runs";
import { readImportRun } from "@/lib/services/imports/history";
import { confirmMapping } from "@/lib/services/trend-imports/confirm";
import { queueTrendImports, workOffQueue } from "@/lib/services/trend-imports/queue";
import { receiveTrendFile } from "@/lib/services/trend-imports/receive";
import { workInline } from "@/lib/services/trend-imports/work";
import { smallOffice } from "./office";
import { wideCsv } from "./trend-csv";

const COLUMN = "2-14 ZN-T (°F)";
const POINT = "2-14 ZN-T";

/** A small building with an import queue, and the moves of those who fill it and work it off. */
export function queueOffice(changes: Parameters<typeof smallOffice>[0] = {}) {
  const { ctx, buildingId, zoneId } = smallOffice(changes);
  const work = workInline(ctx);
  const faults: unknown[] = [];
  const choice = { skip: false as const, kind: "zone-air-temp" as const, zoneId, unit: null };

  /** A file of zone air temperatures [°F], received and not read yet. */
  const receive = async (name: string, temps: readonly (number | string)[] = [72, 71, 70]): Promise<number> => {
    const kept = await ctx.uploads.saveFrom([wideCsv({ [COLUMN]: temps })]);
    return receiveTrendFile(ctx, buildingId, { fileName: name, ...kept }).run.id;
  };
  const workOff = () => workOffQueue(ctx, work, (error) => faults.push(error));
  const map = (id: number) => {
    queueTrendImports(ctx, buildingId, confirmMapping(ctx, buildingId, { points: { [POINT]: choice } }, [id]));
  };
  return {
    ctx,
    buildingId,
    zoneId,
    work,
    faults,
    receive,
    workOff,
    map,
    run: (id: number) => readImportRun(ctx, buildingId, id).run,
    /** Puts a run into a state as a stopped or another program would have left it. */
    leave: (id: number, row: Parameters<typeof updateImportRun>[2]) => updateImportRun(ctx.db, id, row),
    /** Received, read, mapped and stored. */
    async store(name: string, temps?: readonly (number | string)[]): Promise<number> {
      const id = await receive(name, temps);
      await workOff();
      if (readImportRun(ctx, buildingId, id).run.state === "waiting") map(id);
      await workOff();
      return id;
    },
    /** Stored values of the building's one point [°C]. */
    async values(): Promise<number[]> {
      const found: number[] = [];
      for await (const { v, decimals } of ctx.trends.read([1], 0, 4e9))
        for (const value of v) found.push(value / 10 ** decimals);
      return found;
    },
  };
}
