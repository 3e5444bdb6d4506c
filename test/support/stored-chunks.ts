import Database from "better-sqlite3";

/** Every chunk of a trend store as it stands on disk, blobs as hex, for comparing stores byte by byte. */
export function storedChunks(file: string): unknown[] {
  const db = new Database(file, { readonly: true });
  const rows = db.prepare("select id, n, t0, t1, vmin, vmax, vsum, hex(data) data from chunk order by id").all();
  db.close();
  return rows;
}
