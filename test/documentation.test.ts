import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { missingPaths, unmentioned } from "./support/documentation-faults";

const PROJECT = path.join(import.meta.dirname, "..");
const DOCUMENTS = ["README.md", "DEVELOPERS.md"];
const SOURCES = ["app", "lib", "db", "test", ".ci"];

const read = (file: string) => readFileSync(path.join(PROJECT, file), "utf8");

function projectFiles(): Set<string> {
  const top = readdirSync(PROJECT, { withFileTypes: true }).filter((entry) => entry.isFile());
  const inside = SOURCES.flatMap((folder) =>
    readdirSync(path.join(PROJECT, folder), { recursive: true, encoding: "utf8" }).map((name) =>
      path.posix.join(folder, name.split(path.sep).join("/")),
    ),
  );
  return new Set([...top.map((entry) => entry.name), ...inside]);
}

test("every folder of lib and every npm script is described", () => {
  const entries = readdirSync(path.join(PROJECT, "lib"), { withFileTypes: true });
  const folders = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  const scripts = Object.keys(JSON.parse(read("package.json")).scripts);
  expect(folders.length).toBeGreaterThan(8);
  expect(unmentioned(DOCUMENTS.map(read).join("\n"), { folders, scripts })).toEqual([]);
});

test.each(DOCUMENTS)("every path that %s names is there", (document) => {
  expect(missingPaths(document, read(document), projectFiles())).toEqual([]);
});

test("the check finds what is not described", () => {
  const text = "`lib/units time` holds, `npm run lint` and `npm test` run.";
  const all = { folders: ["units", "time", "money"], scripts: ["lint", "test", "types", "lint:fix"] };
  expect(unmentioned(text, all)).toEqual([
    "the folder lib/money is not described",
    "the script npm run types is not described",
    "the script npm run lint:fix is not described",
  ]);
});

test("the check finds paths that are gone, in text and in code blocks", () => {
  const files = new Set(["lib/units/area.ts", "app/buildings/[buildingId]/page.tsx"]);
  const text =
    "See `lib/units`, `lib/units/area.ts`, `lib/units/area`, `page.tsx`, `lib/units/gone.ts`, `gone.ts`, `lib/gone`, `units/area.ts`, " +
    "`app/buildings/[buildingId]/`, `lib/*`, `npm run lint`, `day.csv`.\n```\nnode app/gone.mjs --json\n```\n";
  expect(missingPaths("A.md", text, files)).toEqual(
    ["app/gone.mjs", "lib/units/gone.ts", "gone.ts", "lib/gone"].map(
      (name) => `A.md names ${name}, which is not there`,
    ),
  );
});
