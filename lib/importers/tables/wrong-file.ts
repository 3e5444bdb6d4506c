import { normalHeading } from "./columns";
import { refuseTable, type TableKind, type TableRefusal } from "./table-read";

const TIME_HEADINGS = new Set(
  ["timestamp", "time", "date", "datetime", "date time", "date/time", "time stamp", "trend time"].map(normalHeading),
);
const STAMP = /^"?\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}[ T,;]+\d{1,2}:\d{2}/;

/** Refuses a file that is plainly another kind of file, and says where it belongs. */
export function refuseOtherKind(text: string, kind: TableKind): TableRefusal | null {
  const lines = text.split(/\r\n|\n|\r/, 12).filter((line) => line.trim() !== "" && !line.startsWith("#"));
  const first = lines[0] ?? "";
  if (first === "") return refuseTable("empty-file", `The file is empty. Put a heading line and the ${kind} in it.`);
  if (/^\s*LOCATION,/i.test(first) || /Time \(HH:MM\)/i.test(lines[1] ?? "")) {
    return refuseTable("looks-like-weather", `This is a weather file, not a table of ${kind}. Bring it in as weather.`);
  }
  const headings = first.split(/[,;\t|]/).map((cell) => normalHeading(cell.replace(/"/g, "")));
  const time = headings.find((heading) => TIME_HEADINGS.has(heading));
  const stamped = lines.find((line) => STAMP.test(line));
  if (!time && !stamped) return null;
  const why = time ? `it has a column "${time}"` : `rows begin with a date and time ("${stamped?.slice(0, 20)}")`;
  return refuseTable(
    "looks-like-trends",
    `This looks like a trend log, not a table of ${kind}: ${why}. Bring it in as a trend log instead.`,
  );
}
