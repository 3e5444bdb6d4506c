import { execFile } from "node:child_process";
import { accessSync, constants } from "node:fs";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";

const NAMES = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"] as const;
const TIMEOUT_MS = 60_000;

export type Printed =
  | { status: "ok"; bytes: Uint8Array<ArrayBuffer> }
  /** No program here that prints pages: the browser's own print does the same. */
  | { status: "no-program" }
  | { status: "failed" };

/** Path of the program that prints pages: the one that `CHROMIUM_PATH` names, else one of the usual names on the path. */
export function printProgram(): string | null {
  const named = process.env.CHROMIUM_PATH;
  if (named) return isProgram(named) ? named : null;
  const folders = (process.env.PATH ?? "").split(path.delimiter).filter((folder) => folder !== "");
  const places = folders.flatMap((folder) => NAMES.map((name) => path.join(folder, name)));
  return places.find(isProgram) ?? null;
}

function isProgram(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * Prints a page that needs nothing from elsewhere, with the paper and margins of its own style sheet. It runs with a
 * profile of its own that is gone afterwards, and without the network.
 */
export async function printPdf(html: string, program = printProgram()): Promise<Printed> {
  if (program === null) return { status: "no-program" };
  const folder = await mkdtemp(path.join(tmpdir(), "setpoint-ledger-print-"));
  try {
    const [page, printed] = [path.join(folder, "page.html"), path.join(folder, "page.pdf")];
    await writeFile(page, html);
    await promisify(execFile)(
      program,
      [
        "--headless",
        "--disable-gpu",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--host-resolver-rules=MAP * ~NOTFOUND",
        // Its sandbox refuses to run for root, as in many containers; the page is our own and has no script.
        ...(process.getuid?.() === 0 ? ["--no-sandbox"] : []),
        `--user-data-dir=${path.join(folder, "profile")}`,
        "--no-pdf-header-footer",
        `--print-to-pdf=${printed}`,
        pathToFileURL(page).href,
      ],
      { timeout: TIMEOUT_MS },
    );
    return { status: "ok", bytes: Uint8Array.from(await readFile(printed)) };
  } catch (error) {
    console.error("printing a page failed", error);
    return { status: "failed" };
  } finally {
    await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}
