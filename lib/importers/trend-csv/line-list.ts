const MOST_LINES = 100;

/** Count of rows and the lines of the first hundred of them, in whatever order they come. */
export class LineList {
  count = 0;
  private kept: number[] = [];
  /** No line behind this one is among the first hundred. */
  private last = Number.POSITIVE_INFINITY;
  private added: number | null = null;

  add(line: number): void {
    this.count++;
    this.added = line;
    this.keep(line);
  }

  /** Adds rows of which the first lines are given. */
  addMany(count: number, lines: readonly number[]): void {
    this.count += count;
    for (const line of lines) this.keep(line);
  }

  /** Adds rows whose first lines are looked for only while they may be among the first hundred: rows of one part of a file. */
  addCounted(count: number, lines: (before: number) => readonly number[]): void {
    this.addMany(count, lines(this.last));
  }

  addAll(other: LineList): void {
    this.addMany(other.count, other.kept);
  }

  /** Whether a line is among those kept, or was added last. */
  has(line: number): boolean {
    return this.added === line || this.kept.includes(line);
  }

  sorted(): number[] {
    return this.kept.toSorted((a, b) => a - b).slice(0, MOST_LINES);
  }

  private keep(line: number): void {
    if (line > this.last) return;
    this.kept.push(line);
    if (this.kept.length < 4 * MOST_LINES) return;
    this.kept = this.sorted();
    this.last = this.kept[MOST_LINES - 1] as number;
  }
}

/** Count of rows that gave way to another, and the lines of the first fifty with those of the rows that took their place. */
export class ReplacedLines {
  count = 0;
  readonly lines: number[] = [];

  add(replaced: number, kept: number): void {
    this.count++;
    if (this.lines.length < MOST_LINES) this.lines.push(replaced, kept);
  }

  addAll(other: ReplacedLines): void {
    this.count += other.count;
    for (const line of other.lines) if (this.lines.length < MOST_LINES) this.lines.push(line);
  }
}
