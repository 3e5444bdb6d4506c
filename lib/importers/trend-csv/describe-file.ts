import type { FileContext } from "./file-context";
import type { PointDraft } from "./point-draft";
import type { SectionReading } from "./read-section";
import type { Clock } from "./read-table";
import { READ } from "./stamp-column";
import type { TrendDetected } from "./trend-file";

/** What the detection found, for the preview. */
export function describeFile(
  { rows, skeleton }: FileContext,
  sections: readonly SectionReading[],
  drafts: readonly PointDraft[],
  timeZone: string,
): TrendDetected {
  const first = skeleton.sections[0];
  const clock = skeleton.clocks[0] as Clock;
  const layout = sections[0]?.layout;
  const samplings = new Set(drafts.map((draft) => draft.sampling));
  const [sampling] = samplings;
  return {
    headerLine: first && first.headerRow >= 0 ? (rows.lines[first.headerRow] as number) : null,
    ...(first && first.unitsRow >= 0 ? { unitsLine: rows.lines[first.unitsRow] as number } : {}),
    layout: sections.length > 1 ? "stacked" : (layout?.form ?? "wide"),
    timeColumns:
      clock.source.form === "date-and-time"
        ? 2
        : skeleton.clocks.length > 1 && layout?.form === "pairs"
          ? skeleton.clocks.length
          : 1,
    dateOrder: dateOrder(skeleton, clock),
    stampMarks: layout?.stampMarks ?? "instant",
    stampZone: stampZone(clock, layout, timeZone),
    sampling: samplings.size > 1 ? "mixed" : (sampling ?? "interval"),
    stepSeconds: drafts.find((draft) => draft.stepSeconds !== null)?.stepSeconds ?? null,
  };
}

function dateOrder({ order, orderUsed }: FileContext["skeleton"], { source }: Clock): TrendDetected["dateOrder"] {
  if (source.form === "serial") return "serial";
  if (source.form === "epoch-seconds" || source.form === "epoch-milliseconds") return "epoch";
  if (order.status === "known") return orderUsed;
  return order.status === "not-needed" ? "ymd" : undefined;
}

function stampZone(clock: Clock, layout: SectionReading["layout"] | undefined, timeZone: string): string {
  if (clock.source.form === "epoch-seconds" || clock.source.form === "epoch-milliseconds") return "UTC";
  const at = clock.stamps.status.indexOf(READ);
  if (at >= 0 && !Number.isNaN(clock.stamps.offset[at] as number)) return "in each stamp";
  if (layout?.saysUtc) return "UTC";
  return layout && layout.offsetColumn !== null ? "offset column" : timeZone;
}
