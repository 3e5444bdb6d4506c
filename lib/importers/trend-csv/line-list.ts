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

  addAll(other: LineList): void {
    this.count += other.count;
    for (const line of other.lines) if (this.lines.length < MOST_LINES) this.lines.push(line);
  }

  sorted(): number[] {
    return [...this.lines].sort((a, b) => a - b);
  }
}
