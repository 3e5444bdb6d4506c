/** Count of rows and the lines of the first hundred of them. */
export class LineList {
  count = 0;
  readonly lines: number[] = [];

  add(line: number): void {
    this.count++;
    if (this.lines.length < 100) this.lines.push(line);
  }

  addAll(other: LineList): void {
    this.count += other.count;
    for (const line of other.lines) if (this.lines.length < 100) this.lines.push(line);
  }

  sorted(): number[] {
    return [...this.lines].sort((a, b) => a - b);
  }
}
