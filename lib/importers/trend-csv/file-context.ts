import type { CellEvidence } from "./cell-evidence";
import type { CellReader, ReadCells } from "./cell-reader";
import type { Layout } from "./layout";
import { LineList, ReplacedLines } from "./line-list";
import type { Skeleton } from "./read-table";
import type { RowFates } from "./row-fates";
import type { Rows } from "./rows";
import type { TrendAnswers } from "./trend-file";

export type FileLists = Record<
  "event" | "unreadable" | "ambiguous" | "nonexistent" | "repeated" | "trailing" | "identical",
  LineList
> & { conflicting: ReplacedLines };

/** What the steps of reading one file share. */
export type FileContext = {
  rows: Rows;
  skeleton: Skeleton;
  fates: RowFates;
  reader: CellReader;
  answers: TrendAnswers;
  fileStem: string;
  lists: FileLists;
  /** The table that an earlier part of the file began and these rows go on with. */
  continued: TableContinuation | null;
  isLast: boolean;
  /** What the cells of a point hold in the whole file, or in as much of it as is known. */
  evidence(section: number, name: string, cells: ReadCells): CellEvidence;
  /** Unit as written of a point that an earlier part of the file began; undefined for a new one. */
  unitBefore(section: number, name: string): string | null | undefined;
};

export type TableContinuation = { section: number; layout: Layout; width: number };

export const newLists = (): FileLists => ({
  event: new LineList(),
  unreadable: new LineList(),
  ambiguous: new LineList(),
  nonexistent: new LineList(),
  repeated: new LineList(),
  trailing: new LineList(),
  identical: new LineList(),
  conflicting: new ReplacedLines(),
});
