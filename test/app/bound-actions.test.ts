import { expect, test } from "vitest";
import { sourceFiles } from "../support/architecture/source-files";

test("no client component binds a server action while it renders", () => {
  const clients = sourceFiles("app").filter(({ source }) => source.startsWith('"use client"'));
  expect(clients.length).toBeGreaterThan(5);
  expect(clients.filter(({ source }) => /Action\.bind\(/.test(source)).map(({ file }) => file)).toEqual([]);
});
