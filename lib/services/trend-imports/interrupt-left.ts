import { interruptRunningImports } from "@/db/queries/import-runs";
import type { Context } from "../context";

/**
 * Marks imports that a stopped server left behind; for the web server's start only. An import of another process that
 * is still at work is marked too, and marked done when it ends.
 */
export function interruptLeftImports(ctx: Pick<Context, "db">): number {
  return interruptRunningImports(
    ctx.db,
    "The import was cut off. What was stored stays; bring the file in again to complete it.",
  );
}
