import type { FileContext } from "./file-context";
import type { Rhythm } from "./gaps";
import type { Layout } from "./layout";
import type { SectionReading } from "./read-section";
import type { Clock } from "./read-table";
import { READ } from "./stamp-column";
import type { TrendDetected } from "./trend-file";

/** What the first part of a file says of the whole. */
export type Opening = { preambleLines: number; detected: TrendDetected };

/** What the detection found in the part that a file begins with. `hinted`: a `sep=` line stood before the table. */
export function describeOpening(
  context: FileContext,
  { layout }: SectionReading,
  { timeZone, hinted }: { timeZone: string; hinted: boolean },
): Opening {
  const { rows, skeleton } = context;
  const first = skeleton.sections[0];
  const clock = skeleton.clocks[0] as Clock;
  const headerLine = first && first.headerRow >= 0 ? (rows.lines[first.headerRow] as number) : null;
  return {
    preambleLines:
      headerLine === null ? 0 : Math.max(0, headerLine - 1 - (hinted ? 1 : 0) - (layout.namesRowUsed ? 1 : 0)),
    detected: {
      headerLine,
      ...(first && first.unitsRow >= 0 ? { unitsLine: rows.lines[first.unitsRow] as number } : {}),
      layout: layout.form,
      timeColumns:
        clock.source.form === "date-and-time"
          ? 2
          : skeleton.clocks.length > 1 && layout.form === "pairs"
            ? skeleton.clocks.length
            : 1,
      dateOrder: dateOrder(skeleton, clock),
      stampMarks: layout.stampMarks,
      stampZone: stampZone(clock, layout, timeZone),
    },
  };
}

/** The detection of the whole file. */
export function describeFile(opening: Opening, tables: number, rhythms: Iterable<Rhythm>): TrendDetected {
  const all = [...rhythms];
  const samplings = new Set(all.map(({ sampling }) => sampling));
  const [sampling] = samplings;
  return {
    ...opening.detected,
    ...(tables > 1 ? { layout: "stacked" } : {}),
    sampling: samplings.size > 1 ? "mixed" : (sampling ?? "interval"),
    stepSeconds: all.find(({ stepSeconds }) => stepSeconds !== null)?.stepSeconds ?? null,
  };
}

function dateOrder({ order, orderUsed }: FileContext["skeleton"], { source }: Clock): TrendDetected["dateOrder"] {
  if (source.form === "serial") return "serial";
  if (source.form === "elapsed-seconds") return "elapsed";
  if (source.form === "epoch-seconds" || source.form === "epoch-milliseconds") return "epoch";
  if (order.status === "known") return orderUsed;
  return order.status === "not-needed" ? "ymd" : undefined;
}

function stampZone(clock: Clock, layout: Layout, timeZone: string): string {
  if (clock.source.form === "epoch-seconds" || clock.source.form === "epoch-milliseconds") return "UTC";
  if (clock.source.form === "elapsed-seconds") return timeZone;
  const at = clock.stamps.status.indexOf(READ);
  if (at >= 0 && !Number.isNaN(clock.stamps.offset[at] as number)) return "in each stamp";
  if (layout.saysUtc) return "UTC";
  return layout.offsetColumn !== null ? "offset column" : timeZone;
}
