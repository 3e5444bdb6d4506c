import { existsSync } from "node:fs";
import { afterEach, describe, expect, test, vi } from "vitest";
import { printPdf, printProgram } from "@/lib/services/business-case/print-pdf";

afterEach(() => vi.unstubAllEnvs());

test("without a program that prints, that is said", async () => {
  vi.stubEnv("CHROMIUM_PATH", "");
  vi.stubEnv("PATH", "");
  expect(printProgram()).toBeNull();
  expect(await printPdf("<p>page</p>")).toEqual({ status: "no-program" });
});

test("a named program that is not there is not replaced by another", () => {
  vi.stubEnv("CHROMIUM_PATH", "/no/such/program");
  expect(printProgram()).toBeNull();
});

test("a program that fails is told apart, and its folder is cleared away", async () => {
  const log = vi.spyOn(console, "error").mockImplementation(() => {});
  expect(await printPdf("<p>page</p>", "/bin/false")).toEqual({ status: "failed" });
  expect(log).toHaveBeenCalledOnce();
  log.mockRestore();
});

const program = process.env.CHROMIUM_PATH ?? "/usr/bin/chromium";

describe.skipIf(!existsSync(program))("with a browser (skipped where none is installed)", () => {
  test("prints as many pages as the style sheet asks for", async () => {
    const page =
      "<style>@page{size:A4}p{break-after:page}p:last-child{break-after:auto}</style><p>1</p><p>2</p><p>3</p>";
    const printed = await printPdf(page, program);
    if (printed.status !== "ok") throw new Error(`printing was ${printed.status}`);
    const text = Buffer.from(printed.bytes).toString("latin1");
    expect(text.startsWith("%PDF-")).toBe(true);
    expect(text.match(/\/Type\s*\/Page\b/g)).toHaveLength(3);
    expect(text).toMatch(/\/MediaBox\s*\[0 0 59[45]/);
  }, 60_000);
});
