import type { CellReader } from "./cell-reader";
import type { LineList } from "./line-list";
import type { Skeleton } from "./read-table";
import type { RowFates } from "./row-fates";
import type { Rows } from "./rows";
import type { TrendAnswers } from "./trend-file";

export type FileLists = Record<
  "event" | "unreadable" | "ambiguous" | "nonexistent" | "repeated" | "trailing",
  LineList
>;

/** What the steps of reading one file share. */
export type FileContext = {
  rows: Rows;
  skeleton: Skeleton;
  fates: RowFates;
  reader: CellReader;
  answers: TrendAnswers;
  fileStem: string;
  lists: FileLists;
};
