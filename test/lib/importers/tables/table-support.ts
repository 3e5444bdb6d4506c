import type { TableRead, TableRefusal } from "@/lib/importers/tables/table-read";

export const textBytes = (text: string): Uint8Array => new TextEncoder().encode(text);

type Accepted<Row> = Extract<TableRead<Row>, { status: "ok" }>;

export function acceptedTable<Row>(read: TableRead<Row>): Accepted<Row> {
  if (read.status !== "ok") throw new Error(read.message);
  return read;
}

export function refusedTable<Row>(read: TableRead<Row>): TableRefusal {
  if (read.status !== "refused") throw new Error("expected a refusal");
  return read;
}

export const fatesOf = <Row>(read: Accepted<Row>): [number, string, string][] =>
  read.fates.map((fate) => [fate.line, fate.fate, "code" in fate ? fate.code : ""]);
