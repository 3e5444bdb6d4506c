import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { printCircumstances } from "./circumstances";
import { runContender } from "./contender";
import type { CampusRead } from "./contenders/campus-read";
import type { CampusWritten } from "./contenders/campus-write";
import { makeDataFolder } from "./data/data-folder";
import { line, target } from "./targets";

type Scale = { zones: number; written: CampusWritten; read: CampusRead };

/** From 60 zones to 2,000, four points each, three years: `campus [years] [zones]`. */
export async function benchCampus([years = "3", zones = "2000"]: string[]): Promise<void> {
  printCircumstances();
  const folder = mkdtempSync(path.join(process.env.BENCH_FOLDER ?? tmpdir(), "bench-campus-"));
  const days = Math.round(Number(years) * 365);
  try {
    const small = await measure(folder, 60, days);
    const large = await measure(folder, Number(zones), days);
    report(small, large, Number(years));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function measure(folder: string, zones: number, days: number): Promise<Scale> {
  const dataFolder = path.join(folder, `zones-${zones}`);
  makeDataFolder(dataFolder, zones);
  const written = await runContender<CampusWritten>("campus-write", { dataFolder, days });
  const { readings, bytes, ms, cpuMs, peakMb } = written;
  line(
    `\n${zones} zones, ${days} days: ${(readings / 1e6).toFixed(1)} M readings written in ${(ms / 1000).toFixed(1)} s ` +
      `(${(readings / ms / 1000).toFixed(1)} M/s, processor time ${(cpuMs / 1000).toFixed(1)} s, inventing them included), ${(bytes / 1e6).toFixed(0)} MB on disk, peak ${peakMb.toFixed(0)} MB`,
  );
  const read = await runContender<CampusRead>("campus-read", { dataFolder });
  line(
    `  overview ${(read.firstOverviewMs / 1000).toFixed(2)} s worked out anew, ${read.overviewMs.toFixed(0)} ms kept; ` +
      `a zone's history ${read.historyMs.toFixed(1)} ms; latest of all points ${read.latestMs.toFixed(1)} ms; peak ${read.peakMb.toFixed(0)} MB`,
  );
  line(
    `  degree-hours of all zones ${(read.degreeHoursMs / 1000).toFixed(2)} s (first time ${(read.coldDegreeHoursMs / 1000).toFixed(2)} s), ` +
      `${(read.readingsRead / 1e6).toFixed(0)} M readings, ${read.degreeHours.toFixed(1)} K·h`,
  );
  return { zones, written, read };
}

function report(small: Scale, large: Scale, years: number): void {
  const growth = large.zones / small.zones;
  line(`\nfrom ${small.zones} to ${large.zones} zones, ${growth.toFixed(1)} times as many:`);
  const times = (what: string, a: number, b: number) => line(`  ${what.padEnd(36)} ${(b / a).toFixed(1)} times`);
  times("bytes on disk", small.written.bytes, large.written.bytes);
  times("overview, worked out anew", small.read.firstOverviewMs, large.read.firstOverviewMs);
  times("overview, kept", small.read.overviewMs, large.read.overviewMs);
  times("a zone's history", small.read.historyMs, large.read.historyMs);
  times("latest of all points", small.read.latestMs, large.read.latestMs);
  times("degree-hours of all zones", small.read.degreeHoursMs, large.read.degreeHoursMs);

  const { written, read } = large;
  target({ what: "campus: on disk", figure: written.bytes / written.readings, limit: 1.3, unit: "bytes/reading" });
  target({ what: "campus: peak memory of writing", figure: written.peakMb, limit: 350, unit: "MB" });
  const seconds = read.degreeHoursMs / 1000;
  const share = (years / 3) * (large.zones / 2000);
  target({ what: "campus: degree-hours, warm", figure: seconds, limit: 6 * share, unit: "s" });
  target({
    what: "campus: degree-hours, first time",
    figure: read.coldDegreeHoursMs / 1000,
    limit: 10 * share,
    unit: "s",
  });
  const rate = read.readingsRead / seconds / 1e6;
  target({ what: "campus: decoded and analysed", figure: rate, limit: 60, atLeast: true, unit: "M readings/s" });
}
