const MOST_LINES = 100;

/** Count of rows and the lines of the first hundred of them, in whatever order they come. */
export class LineList {
  count = 0;
  private kept: number[] = [];

  add(line: number): void {
    this.count++;
    this.keep(line);
  }

  /** Adds rows of which the first lines are given. */
  addMany(count: number, lines: readonly number[]): void {
    this.count += count;
    for (const line of lines) this.keep(line);
  }

  addAll(other: LineList): void {
    this.addMany(other.count, other.kept);
  }

  has(line: number): boolean {
    return this.kept.includes(line);
  }

  sorted(): number[] {
    return this.kept.toSorted((a, b) => a - b).slice(0, MOST_LINES);
  }

  private keep(line: number): void {
    this.kept.push(line);
    if (this.kept.length >= 4 * MOST_LINES) this.kept = this.sorted();
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
