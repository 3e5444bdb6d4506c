import { expect, test } from "vitest";
import { fileFaults } from "./support/architecture/file-faults";
import { importFaults } from "./support/architecture/import-faults";
import { purityFaults } from "./support/architecture/purity-faults";
import { sourceFiles } from "./support/architecture/source-files";

const product = sourceFiles("app", "lib", "db");

test("there are sources to look at", () => {
  for (const folder of ["app/", "lib/", "db/"]) {
    expect(product.filter(({ file }) => file.startsWith(folder)).length).toBeGreaterThan(10);
  }
});

test("every import is one that the table allows", () => {
  expect(product.flatMap(({ file, source }) => importFaults(file, source))).toEqual([]);
});

test("the folders of lib, but the services, know only their arguments", () => {
  expect(product.flatMap(({ file, source }) => purityFaults(file, source))).toEqual([]);
});

test("files are named for what they hold, hold something, and are not too long", () => {
  expect([...product, ...sourceFiles("test")].flatMap(({ file, source }) => fileFaults(file, source))).toEqual([]);
});

/** A file, one line of it, and what must be said of it (null: nothing). */
const IMPORTS: [file: string, source: string, fault: RegExp | null][] = [
  ["lib/trends/a.ts", 'import { b } from "@/lib/electrical/b";', /lib\/trends may not import lib\/electrical/],
  ["lib/trends/a.ts", 'import { b } from "../electrical/b";', /may not import lib\/electrical/],
  ["lib/trends/a.ts", 'import type { B } from "@/lib/electrical/b";', /may not import lib\/electrical/],
  ["lib/trends/a.ts", 'type B = import("@/db/client").AppDatabase;', /may not import db\/client/],
  ["lib/trends/a.ts", 'export { b } from "@/lib/overcooling/b";', /may not import lib\/overcooling/],
  ["lib/trends/a.ts", 'const b = await import("@/lib/services/b");', /may not import lib\/services/],
  ["lib/trends/a.ts", 'const b = require("node:fs");', /may not import Node's own modules/],
  ["lib/trends/a.ts", 'import { readFileSync } from "fs";', /may not import the package fs/],
  ["lib/trends/a.ts", "const b = await import(name);", /may not import the package \(computed\)/],
  ["lib/trends/a.ts", 'import { b } from "@/lib/time/b";', null],
  ["lib/trends/diagnosis/a.ts", 'import { b } from "../b";', null],
  ["lib/finance/a.ts", 'import { b } from "@/lib/assumptions/b";', /may not import lib\/assumptions/],
  ["lib/units/a.ts", 'import { Temporal } from "temporal-polyfill";', /may not import the package temporal-polyfill/],
  ["lib/time/a.ts", 'import { Temporal } from "temporal-polyfill";', null],
  [
    "lib/importers/x/a.ts",
    'import { b } from "@/lib/trends/b";',
    /may import types of lib\/trends, but nothing that runs/,
  ],
  ["lib/importers/x/a.ts", 'import type { B } from "@/lib/trends/b";', null],
  ["lib/importers/x/a.ts", 'import { type B, type C } from "@/lib/trends/b";', null],
  ["lib/importers/x/a.ts", 'import { type B, c } from "@/lib/trends/b";', /nothing that runs/],
  ["lib/electrical/a.ts", 'import { ServiceError } from "@/lib/services/errors";', /may not import lib\/services/],
  ["lib/services/x/a.ts", 'import { redirect } from "next/navigation";', /may not import the package next/],
  ["lib/services/x/a.ts", 'import { useState } from "react";', /may not import the package react/],
  ["lib/services/x/a.ts", 'import { b } from "@/app/_server/b";', /may not import app\/_server/],
  ["lib/services/x/a.ts", 'import { seed } from "@/db/seed/seed";', /may not import db\/seed/],
  ["db/queries/a.ts", 'import { ServiceError } from "@/lib/services/errors";', /may not import lib\/services/],
  ["db/trends/a.ts", 'import { b } from "../queries/b";', /may not import db\/queries/],
  ["app/buildings/page.tsx", 'import { b } from "@/db/queries/b";', /app may not import db\/queries/],
  ["app/buildings/page.tsx", 'import type { B } from "@/db/schema/b";', /app may not import db\/schema/],
  ["app/buildings/page.tsx", 'import { b } from "@/lib/services/b";', null],
  [
    "app/_server/session.ts",
    'import { openAppDatabase } from "@/db/client";',
    /app\/_server may not import db\/client/,
  ],
  ["app/_server/open-stores.ts", 'import { openAppDatabase } from "@/db/client";', null],
  ["app/devices/_components/a.tsx", 'import { b } from "@/lib/services/b";', /may import types of lib\/services/],
  ["app/devices/_components/a.tsx", 'import { save } from "../actions";', null],
  [
    "app/devices/_components/a.tsx",
    'import { save } from "@/app/zones/actions";',
    /types of app, but nothing that runs/,
  ],
  ["app/_cli/a.ts", 'import { seed } from "@/db/seed/seed";', null],
  ["lib/gadgets/a.ts", "export const a = 1;", /has no row in the import table/],
];

test.each(IMPORTS)("the import check judges %s: %s", (file, source, fault) => {
  const faults = importFaults(file, source).join("\n");
  if (fault === null) expect(faults).toBe("");
  else expect(faults).toMatch(fault);
});

const IMPURE = [
  "Date.now()",
  "new Date()",
  "Math.random()",
  "process.env.HOME",
  "performance.now()",
  'fetch("x")',
  "Date()",
];

test.each(IMPURE)("the purity check finds %s in a pure folder and lets it be elsewhere", (use) => {
  const source = `export const a = () => ${use};`;
  expect(purityFaults("lib/trends/a.ts", source)).toHaveLength(1);
  expect(purityFaults("lib/services/a.ts", source)).toEqual([]);
});

test("the purity check is not taken in by comments, strings and dates that are given", () => {
  const source = '/** not Date.now() */ export const a = (ms: number) => [new Date(ms), "Math.random()"];';
  expect(purityFaults("lib/time/a.ts", source)).toEqual([]);
});

test("the file check finds empty names, barrels and long files", () => {
  const one = "export const a = 1;\n";
  expect(fileFaults("lib/trends/trend-utils.ts", one).join()).toContain('"utils"');
  expect(fileFaults("lib/helpers/a.ts", one).join()).toContain('"helpers"');
  expect(fileFaults("lib/trends/index.ts", one).join()).toContain("barrel");
  expect(fileFaults("lib/trends/all.ts", 'export * from "./a";\nexport { b } from "./b";\n').join()).toContain(
    "barrel",
  );
  expect(fileFaults("lib/trends/a.ts", one.repeat(351)).join()).toContain("351 lines");
  expect(fileFaults("lib/trends/a.ts", one.repeat(350))).toEqual([]);
});
