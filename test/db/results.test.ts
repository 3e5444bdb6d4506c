import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import Database from "better-sqlite3";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openResultStore } from "@/db/results";
import { runAndKill } from "../support/killed-process";

let folder: string;
let file: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), "results-"));
  file = path.join(folder, "results.db");
});
afterEach(() => rmSync(folder, { recursive: true }));

const row = { buildingId: 1, subject: "shown/zones", restsOn: "a", workedOutAtMs: 7, result: { zones: [1.5, null] } };

describe("the result store", () => {
  it("gives back the last result of each building and subject", () => {
    const results = openResultStore(file);
    results.save(row);
    results.save({ ...row, restsOn: "b", result: { zones: [2] } });
    results.save({ ...row, buildingId: 2 });
    expect(results.find(1, "shown/zones")).toEqual({ ...row, restsOn: "b", result: { zones: [2] } });
    expect(results.stamp(2, "shown/zones")).toEqual({
      buildingId: 2,
      subject: "shown/zones",
      restsOn: "a",
      workedOutAtMs: 7,
    });
    expect(results.find(1, "shown/cost")).toBeNull();
    results.close();
  });

  it("lists those whose subject begins alike, of one building", () => {
    const results = openResultStore(file);
    for (const subject of ["zone-analysis/2", "zone-analysis/10", "zone-days/2"]) results.save({ ...row, subject });
    results.save({ ...row, buildingId: 2, subject: "zone-analysis/3" });
    const found = results.list(1, "zone-analysis/").map((each) => each.subject);
    expect(found.sort()).toEqual(["zone-analysis/10", "zone-analysis/2"]);
    results.close();
  });

  it("begins anew with a file of another form: all of it can be worked out again", () => {
    const old = new Database(file);
    old.exec("create table result (something text)");
    old.pragma("user_version = 99");
    old.close();
    const results = openResultStore(file);
    results.save(row);
    expect(results.find(1, "shown/zones")?.result).toEqual(row.result);
    results.close();
  });

  it("holds a whole result after a kill in mid-write", { timeout: 60_000 }, async () => {
    for (const afterMs of [40, 90, 170]) {
      await runAndKill("keep-results-until-killed", [file], afterMs);
      const results = openResultStore(file);
      const kept = results.find(1, "shown/zones");
      const numbers = kept?.result as number[];
      expect(numbers.length).toBe(20_000);
      expect(numbers.every((n) => n === kept?.workedOutAtMs)).toBe(true);
      results.close();
    }
  });
});
