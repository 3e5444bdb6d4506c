import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { gunzipSync } from "node:zlib";
import type { Page } from "@playwright/test";
import Database from "better-sqlite3";
import { runCommand } from "../support/run-command";
import { baseUrl, SERVERS } from "../support/servers";
import { beSignedIn, expect, test } from "./fixtures";
import { hasRealFiles } from "./real-files";
import { CHICAGO_OFFICE, fillFields } from "./set-up-building";

const SHARED = path.resolve(import.meta.dirname, "../../../shared/data");

type RealSet = {
  folder: string;
  timeZone: string;
  zones: string[];
  /** Points that a person maps by hand, as [what, zone code, unit]. All others stay as proposed, or are left out. */
  byHand: Record<string, [what: string, zone: string | null, unit?: string]>;
  timeStart?: string;
  /** Which of its files; the others have a hundred columns each, and are read in the unit tests. */
  files?: RegExp;
};

const SETS: RealSet[] = [
  {
    folder: "bas-point-exports",
    timeZone: "America/Chicago",
    zones: ["VAV-1", "VAV-2", "VAV-5", "VAV-10", "S-7"],
    byHand: { "S-7_OCC-C": ["leave it out", null] },
  },
  {
    folder: "bas-wide-exports",
    timeZone: "America/Los_Angeles",
    zones: ["RTU"],
    byHand: { ActClgStpt: ["cooling setpoint", "RTU", "degF"], ActHtgStpt: ["heating setpoint", "RTU", "degF"] },
  },
  {
    folder: "room-trends-singapore",
    timeZone: "Asia/Singapore",
    zones: ["Room 3"],
    byHand: {
      air_temperature: ["zone air temperature", "Room 3", "degC"],
      temp_setpoint: ["cooling setpoint", "Room 3", "degC"],
    },
  },
  {
    folder: "sim-office-5zone",
    timeZone: "America/Chicago",
    zones: ["Cor", "Nor", "Wes"],
    byHand: Object.fromEntries(
      ["Cor", "Nor", "Wes"].map((zone) => [
        `hvac_reaZon${zone}_TZon_y`,
        ["zone air temperature", zone, "kelvin"] as [string, string, string],
      ]),
    ),
    timeStart: "2026-01-01T00:00",
    files: /_day\.csv$/,
  },
];

test.skip(!hasRealFiles, "the real trend sets do not lie beside the repository");

for (const set of SETS) {
  test(`${set.folder}: the browser and the command line end in the same samples and the same fate of every row`, async ({
    page,
  }) => {
    test.setTimeout(400_000);
    page.setDefaultTimeout(30_000);
    const work = mkdtempSync(path.join(tmpdir(), "real-set-"));
    const files = unpack(set, work);
    const building = await setUp(page, set);
    await bringIn(page, building, files);
    await mapByHand(page, building, set);
    const server = SERVERS.empty.dataFolder;
    const buildingId = Number(building.split("/").at(-1));
    await expect.poll(() => openRuns(server, buildingId), { timeout: 120_000 }).toBe(0);

    // The same building with its points and what was decided of each, but without a reading, as if all was undone.
    const copy = path.join(work, "data");
    mkdirSync(copy);
    const source = new Database(path.join(server, "app.db"), { readonly: true });
    await source.backup(path.join(copy, "app.db"));
    source.close();
    const emptied = new Database(path.join(copy, "app.db"));
    emptied.prepare("update import_run set state = 'undone' where building_id = ? and kind = 'trends'").run(buildingId);
    emptied.close();
    const answers = set.timeStart ? ["--answer", `time-start=${set.timeStart}`] : [];
    const options = ["--building", String(buildingId), "--accept-proposals"];
    const { out, complaint } = await runCommand(copy, "trends", "import", ...files, ...options, ...answers, "--json");
    expect(JSON.parse(out).files, complaint).toHaveLength(files.length);

    const byBrowser = importsOf(server, buildingId);
    const byCommand = new Map(importsOf(copy, buildingId).map((run) => [run.file, run]));
    const taken = byBrowser.filter(({ added }) => added > 0);
    expect(taken.length).toBeGreaterThan(0);
    // A file of which nothing is wanted is done for a person who says so; the command line leaves it waiting.
    for (const run of byBrowser)
      if (run.added > 0 || run.state === "refused") expect(byCommand.get(run.file), run.file).toEqual(run);
    expect([...byCommand.values()].filter(({ added }) => added > 0)).toHaveLength(taken.length);
    const samples = samplesOf(server, buildingId);
    expect(samples.length).toBeGreaterThan(0);
    expect(JSON.stringify(samplesOf(copy, buildingId)) === JSON.stringify(samples), "chunks byte by byte").toBe(true);
    for (const run of byBrowser)
      expect(run.accepted + run.repaired + run.heldBack + run.rejected + run.ignored, run.file).toBe(run.rows);
    rmSync(work, { recursive: true });
  });
}

/** The set's CSV files, unpacked where they are packed. */
function unpack({ folder, files = /\.csv(\.gz)?$/ }: RealSet, work: string): string[] {
  const from = path.join(SHARED, folder);
  return readdirSync(from)
    .filter((name) => files.test(name))
    .sort()
    .map((name) => {
      const file = path.join(work, name.replace(/\.gz$/, ""));
      if (name.endsWith(".gz")) writeFileSync(file, gunzipSync(readFileSync(path.join(from, name))));
      else cpSync(path.join(from, name), file);
      return file;
    });
}

async function setUp(page: Page, { folder, timeZone, zones }: RealSet): Promise<string> {
  await beSignedIn(page, "empty");
  await page.goto(`${baseUrl("empty")}/buildings/new`);
  await fillFields(page, { ...CHICAGO_OFFICE, Name: folder, "Time zone": timeZone });
  await page.getByRole("button", { name: "Set up the building" }).click();
  await page.waitForURL(/\/buildings\/\d+\/imports$/);
  const building = page.url().replace(/\/imports$/, "");
  await bring(page, building, "Zones (CSV)", {
    name: "zones.csv",
    mimeType: "text/csv",
    buffer: Buffer.from(`zone\n${zones.join("\n")}\n`),
  });
  return building;
}

const bringIn = (page: Page, building: string, files: string[]) =>
  bring(page, building, "Trend logs (CSV, or a zip of them)", files);

async function bring(
  page: Page,
  building: string,
  kind: string,
  files: Parameters<ReturnType<Page["getByLabel"]>["setInputFiles"]>[0],
): Promise<void> {
  await page.goto(`${building}/imports`);
  await page.getByLabel("What the files hold").selectOption({ label: kind });
  await page.getByLabel("Files", { exact: true }).setInputFiles(files);
  await page.getByRole("button", { name: "Bring in" }).click();
  await page.waitForURL(/outcome=/, { timeout: 120_000 });
}

/** Maps as a person would: by hand where the name says too little, everything else that is open left out. */
async function mapByHand(page: Page, building: string, { byHand, timeStart }: RealSet): Promise<void> {
  await expect(async () => {
    await page.goto(`${building}/imports`);
    await expect(page.getByText(/still being read|waits? to be read/)).toHaveCount(0, { timeout: 1000 });
  }).toPass({ timeout: 120_000 });
  await page.goto(`${building}/imports/mapping?show=open`);
  const all = page.getByLabel(/^select all/);
  if (await all.count()) {
    await all.check();
    const everyPage = page.getByLabel(/shown, on every page/);
    if (await everyPage.count()) await everyPage.check();
    await page.getByLabel("Set selected to").selectOption({ label: "leave it out" });
    await page.getByRole("button", { name: "Set", exact: true }).click();
    await expect(page.getByRole("button", { name: /^Take back: \d+ rows?: set to leave it out/ })).toBeVisible();
  }
  for (const [name, [what, zone, unit]] of Object.entries(byHand)) {
    await page.goto(`${building}/imports/mapping?show=all&q=${encodeURIComponent(name)}`);
    await page.getByLabel(`What ${name} is`, { exact: true }).selectOption({ label: what });
    if (zone) await page.getByLabel(`Zone of ${name}`, { exact: true }).selectOption({ label: zone });
    if (unit) await page.getByLabel(`Unit of ${name}`, { exact: true }).selectOption(unit);
    await keep(page);
  }
  await page.goto(`${building}/imports/mapping`);
  if (timeStart)
    for (const field of await page.getByLabel("date and time of day, on the building's clock").all())
      await field.fill(timeStart);
  const stillOpen = page.getByRole("alert").filter({ hasText: "still open" });
  const odd = page.getByLabel("This is right: import it all the same");
  const imports = page.getByRole("heading", { name: "Imports", level: 1 });
  for (let round = 0; round < 4 && (await imports.count()) === 0; round++) {
    for (const link of await stillOpen.locator('a[href^="#what."]').all()) {
      const field = ((await link.getAttribute("href")) ?? "").slice(1);
      await page.locator(`select[id="${field}"]`).selectOption({ label: "leave it out" });
    }
    if (await odd.count()) await odd.check();
    const answered = page.waitForResponse((response) => response.request().method() === "POST");
    await page.getByRole("button", { name: "Confirm and import" }).click();
    await answered;
    await expect(imports.or(stillOpen).or(odd).first()).toBeVisible();
    await page.waitForTimeout(500);
  }
  await expect(imports).toBeVisible();
}

/** Keeps what stands in the fields of the page, and waits until it is kept. */
async function keep(page: Page): Promise<void> {
  const answered = page.waitForResponse((response) => response.request().method() === "POST");
  await page.getByRole("button", { name: "Keep what is entered" }).click();
  await answered;
  await expect(page.getByRole("button", { name: "Keep what is entered" })).toBeEnabled();
}

const WORKED_OFF = ["done", "refused", "cancelled"];

function openRuns(folder: string, buildingId: number): number {
  return importsOf(folder, buildingId).filter(({ state }) => !WORKED_OFF.includes(state)).length;
}

type Import = {
  file: string;
  state: string;
  rows: number;
  accepted: number;
  repaired: number;
  heldBack: number;
  rejected: number;
  ignored: number;
  added: number;
};

/** What became of each trend file of a building. */
function importsOf(folder: string, buildingId: number): Import[] {
  const db = new Database(path.join(folder, "app.db"), { readonly: true });
  const runs = db
    .prepare<[number], Import>(
      `select file_name file, state, rows_in_file rows, rows_accepted accepted, rows_repaired repaired,
         rows_held_back heldBack, rows_rejected rejected, rows_ignored ignored, samples_added added
       from import_run where building_id = ? and kind = 'trends' and state <> 'undone' order by file_name`,
    )
    .all(buildingId);
  db.close();
  return runs;
}

/** Chunks of a building's points, as they stand on disk. */
function samplesOf(folder: string, buildingId: number): unknown[] {
  const db = new Database(path.join(folder, "trend.db"), { readonly: true });
  db.prepare("attach ? as app").run(path.join(folder, "app.db"));
  const chunks = db
    .prepare(
      `select chunk.id, n, t0, t1, hex(data) data from chunk
       where id / 4096 in (select id from app.point where building_id = ?) order by chunk.id`,
    )
    .all(buildingId);
  db.close();
  return chunks;
}
