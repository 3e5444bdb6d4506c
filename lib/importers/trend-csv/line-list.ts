const MOST_LINES = 100;

/** Count of rows and the lines of the first hundred of them. */
export class LineList {
  count = 0;
  readonly lines: number[] = [];

  /** Adds one row by its line, perhaps with the line of the row that took its place. */
  add(...lines: number[]): void {
    this.count++;
    if (this.lines.length < MOST_LINES) this.lines.push(...lines);
  }

  /** Adds rows of which the first lines are given. */
  addMany(count: number, lines: readonly number[]): void {
    this.count += count;
    for (const line of lines) if (this.lines.length < MOST_LINES) this.lines.push(line);
  }

  addAll(other: LineList): void {
    this.addMany(other.count, other.lines);
  }

  sorted(): number[] {
    return [...this.lines].sort((a, b) => a - b);
  }
}
