import Database from "better-sqlite3";
import { beforeEach, expect, test } from "vitest";
import { TimedCommits } from "@/db/trends/timed-commits";

let db: Database.Database;
beforeEach(() => {
  db = new Database(":memory:");
  db.exec("create table note (text)");
});
const notes = () => db.prepare("select text from note order by rowid").pluck().all();
const note = (text: string) => db.prepare("insert into note values (?)").run(text);

test("what must run before a commit runs inside the transaction", async () => {
  const commits = new TimedCommits(db, () => {
    expect(db.inTransaction).toBe(true);
    note("before commit");
  });
  commits.do(() => note("work"));
  await commits.commit();
  expect(db.inTransaction).toBe(false);
  expect(notes()).toEqual(["work", "before commit"]);
});

test("when that fails, the work is not kept either", async () => {
  const commits = new TimedCommits(db, () => {
    throw new Error("out of line");
  });
  commits.do(() => note("work"));
  await expect(commits.commit()).rejects.toThrow("out of line");
  expect([db.inTransaction, notes()]).toEqual([false, []]);
});

test("work that throws takes back what the transaction holds, but nothing committed before", async () => {
  const commits = new TimedCommits(db, () => {});
  commits.do(() => note("first"));
  await commits.commit();
  commits.do(() => note("second"));
  const failing = () => {
    note("third");
    throw new Error("broken");
  };
  expect(() => commits.do(failing)).toThrow("broken");
  expect([db.inTransaction, notes()]).toEqual([false, ["first"]]);
});

test("a transaction is due sooner at a good place than elsewhere, and never before it begins", () => {
  const commits = new TimedCommits(db, () => {});
  expect(commits.due("good")).toBe(false);
  const spin = (ms: number) => {
    for (const end = performance.now() + ms; performance.now() < end; );
  };
  commits.do(() => spin(35));
  expect(commits.due("good")).toBe(true);
  commits.do(() => spin(30));
  expect(commits.due("any")).toBe(true);
});
