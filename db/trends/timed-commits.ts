import { setImmediate as nextTurn } from "node:timers/promises";
import type Database from "better-sqlite3";

/** Work after which a transaction ends: at a good place, and wherever it is. */
const GOOD_PLACE_MS = 30;
const ANYWHERE_MS = 60;

/**
 * Spreads a long job over short immediate transactions and lets the event loop turn between them, so that a server
 * in the same process stays responsive and no other process waits long for the lock. No `await` may
 * stand between `do` and `commit`: others write over the same connection.
 */
export class TimedCommits {
  private startedAt = 0;

  constructor(
    private readonly db: Database.Database,
    /** Runs last in each transaction, to bring in line what depends on the work done. */
    private readonly beforeCommit: () => void,
  ) {}

  /** Does one piece of work in the open transaction, opening one if need be. Rolls back when the work throws. */
  do(work: () => void): void {
    this.guarded(() => {
      if (!this.db.inTransaction) {
        this.db.exec("begin immediate");
        this.startedAt = performance.now();
      }
      work();
    });
  }

  /** Whether the transaction has lasted long enough to be committed here. */
  due(place: "good" | "any"): boolean {
    if (!this.db.inTransaction) return false;
    return performance.now() - this.startedAt >= (place === "good" ? GOOD_PLACE_MS : ANYWHERE_MS);
  }

  async commit(): Promise<void> {
    if (!this.db.inTransaction) return;
    this.guarded(() => {
      this.beforeCommit();
      this.db.exec("commit");
    });
    await nextTurn();
  }

  private guarded(work: () => void): void {
    try {
      work();
    } catch (error) {
      if (this.db.inTransaction) this.db.exec("rollback");
      throw error;
    }
  }
}
