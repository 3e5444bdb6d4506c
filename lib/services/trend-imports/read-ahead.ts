import { statSync } from "node:fs";
import { setImmediate as nextTurn } from "node:timers/promises";
import { type OpenUpload, openFile } from "@/db/uploads";
import { HeldParts } from "@/lib/importers/trend-csv/held-parts";
import { inspectTrendSource } from "@/lib/importers/trend-csv/read-trend-parts";
import type { ReadProgress, TrendFileResult } from "@/lib/importers/trend-csv/trend-file";

/** What a file holds, and its readings if they are not too many to be held. */
export type HeldReading = { result: TrendFileResult; parts: HeldParts };

/** Nobody wants to know any more. */
class GivenUp extends Error {}

/**
 * Reads a file at somebody's path for what it holds while a copy of it is still being made: of a large file that takes as
 * long as a third of the reading. What was read counts only if the file is found unchanged at the end.
 */
export class ReadAhead {
  private readonly source: OpenUpload;
  private readonly before: string;
  private readonly parts = new HeldParts();
  private readonly reading: Promise<TrendFileResult>;
  private onProgress: ((progress: ReadProgress) => void) | null = null;
  private isGivenUp = false;

  /** Begins to read. Throws when the file cannot be opened. */
  constructor(
    private readonly file: string,
    { fileName, timeZone }: { fileName: string; timeZone: string },
  ) {
    this.before = stateOf(file);
    this.source = openFile(file);
    const note = async (progress: ReadProgress): Promise<void> => {
      this.onProgress?.(progress);
      // Lets the copy be told of.
      await nextTurn();
      if (this.isGivenUp) throw new GivenUp();
    };
    this.reading = inspectTrendSource({ fileName, source: this.source, timeZone }, note, this.parts).finally(() =>
      this.source.close(),
    );
    // Whoever waits for it is told.
    this.reading.catch(() => {});
  }

  /**
   * Reads on to the end; null when the file did not stay as it was, so that its copy has to be read. Throw from
   * `onProgress` to stop.
   */
  async finish(onProgress: (progress: ReadProgress) => void): Promise<HeldReading | null> {
    this.onProgress = onProgress;
    try {
      const result = await this.reading;
      return this.isUnchanged ? { result, parts: this.parts } : null;
    } catch (error) {
      // Of a file that is cut off or taken away meanwhile the copy is whole.
      if (this.isUnchanged) throw error;
      return null;
    }
  }

  private get isUnchanged(): boolean {
    return stateOf(this.file) === this.before;
  }

  /** Stops reading. */
  giveUp(): void {
    this.isGivenUp = true;
  }
}

/** Changes when the file is written to or taken away, or another one is put in its place. */
function stateOf(file: string): string {
  const found = statSync(file, { bigint: true, throwIfNoEntry: false });
  return found ? [found.ino, found.size, found.mtimeNs, found.ctimeNs].join(" ") : "gone";
}
