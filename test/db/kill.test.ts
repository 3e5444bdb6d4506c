import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { openAppDatabase } from "@/db/client";
import { runAndKill } from "../support/killed-process";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), "kill-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

test("after kill -9 the database is whole and holds whole transactions only", { timeout: 120_000 }, async () => {
  for (const afterMs of [40, 110, 230]) {
    const file = path.join(folder, `app-${afterMs}.db`);
    await runAndKill("insert-until-killed", [file], afterMs);
    const { $client } = openAppDatabase(file);
    expect($client.pragma("integrity_check", { simple: true })).toBe("ok");
    expect($client.pragma("foreign_key_check")).toEqual([]);
    const rows = $client.prepare("select count(*) from holiday").pluck().get() as number;
    expect(rows).toBeGreaterThan(0);
    expect(rows % 10).toBe(0);
    $client.close();
  }
});
