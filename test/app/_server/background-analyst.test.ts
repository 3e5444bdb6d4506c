import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { makeBackgroundAnalyst } from "@/app/_server/background-analyst";
import type { ToThread } from "@/app/_server/thread-messages";

const JOB = { buildingId: 1, kind: "zones", part: null };
const OTHER = { buildingId: 1, kind: "zone-days", part: "7" };

let sent: ToThread[];
let analyst: ReturnType<typeof makeBackgroundAnalyst>;
beforeEach(() => {
  vi.useFakeTimers();
  sent = [];
  analyst = makeBackgroundAnalyst((message) => sent.push(message), Date.now);
});
afterEach(() => void vi.useRealTimers());

/** Whether a promise is through once `ms` have passed. */
async function isThroughAfter(promise: Promise<void>, ms: number): Promise<boolean> {
  let through = false;
  void promise.then(() => {
    through = true;
  });
  await vi.advanceTimersByTimeAsync(ms);
  return through;
}

describe("asking the background thread for a result", () => {
  it("asks once, and waits until it is kept", async () => {
    const waiting = analyst.bringUpToDate(JOB, "at-once", 200);
    const again = analyst.bringUpToDate(JOB, "at-once", 200);
    expect(await isThroughAfter(waiting, 100)).toBe(false);
    expect(sent).toEqual([{ say: "work-out", job: JOB }]);
    analyst.received({ say: "done", job: JOB });
    expect(
      await isThroughAfter(
        Promise.all([waiting, again]).then(() => undefined),
        0,
      ),
    ).toBe(true);
  });

  it("waits no longer than it is told, however long the thread takes, and who comes later not at all", async () => {
    const waiting = analyst.bringUpToDate(JOB, "at-once", 200);
    expect(await isThroughAfter(waiting, 199)).toBe(false);
    expect(await isThroughAfter(waiting, 1)).toBe(true);
    expect(await isThroughAfter(analyst.bringUpToDate(JOB, "at-once", 200), 0)).toBe(true);
    expect(sent).toHaveLength(1);
  });

  it("tells how far a result is while it is worked out", () => {
    void analyst.bringUpToDate(JOB, "at-once", 0);
    analyst.received({ say: "begun", job: JOB });
    analyst.received({ say: "progress", job: JOB, done: 12, of: 60 });
    expect(analyst.standing(JOB)).toEqual({ progress: { done: 12, of: 60 }, failure: null });
    expect(analyst.standing(OTHER)).toEqual({ progress: null, failure: null });
    analyst.received({ say: "done", job: JOB });
    expect(analyst.standing(JOB).progress).toBeNull();
  });

  it("lets a result rest that only comfort reports have changed, and none that a person has", async () => {
    void analyst.bringUpToDate(JOB, "patient", 0);
    analyst.received({ say: "begun", job: JOB });
    await vi.advanceTimersByTimeAsync(3_000);
    analyst.received({ say: "done", job: JOB });
    void analyst.bringUpToDate(JOB, "patient", 0);
    await vi.advanceTimersByTimeAsync(11_900);
    void analyst.bringUpToDate(JOB, "patient", 0);
    expect(sent).toHaveLength(1);
    // Four times as long as it took.
    await vi.advanceTimersByTimeAsync(200);
    void analyst.bringUpToDate(JOB, "patient", 0);
    expect(sent).toHaveLength(2);
    analyst.received({ say: "done", job: JOB });
    void analyst.bringUpToDate(JOB, "at-once", 0);
    expect(sent).toHaveLength(3);
  });

  it("says that a try failed, and tries again after a minute", async () => {
    const waiting = analyst.bringUpToDate(JOB, "at-once", 200);
    analyst.received({ say: "begun", job: JOB });
    analyst.received({ say: "failed", job: JOB });
    expect(await isThroughAfter(waiting, 0)).toBe(true);
    expect(analyst.standing(JOB).failure?.message).toContain("fault in the calculation");
    expect(await isThroughAfter(analyst.bringUpToDate(JOB, "at-once", 200), 0)).toBe(true);
    expect(sent).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(60_000);
    void analyst.bringUpToDate(JOB, "at-once", 0);
    expect(sent).toHaveLength(2);
    analyst.received({ say: "done", job: JOB });
    expect(analyst.standing(JOB).failure).toBeNull();
  });

  it("holds a breakdown of the thread against what it was working on, and asks for the rest again", async () => {
    const waiting = [JOB, OTHER].map((job) => analyst.bringUpToDate(job, "at-once", 200));
    analyst.received({ say: "begun", job: JOB });
    analyst.threadEnded();
    expect(
      await isThroughAfter(
        Promise.all(waiting).then(() => undefined),
        0,
      ),
    ).toBe(true);
    expect(analyst.standing(JOB).failure?.message).toContain("broke down");
    expect(analyst.standing(OTHER).failure).toBeNull();
    void analyst.bringUpToDate(OTHER, "at-once", 0);
    expect(sent.at(-1)).toEqual({ say: "work-out", job: OTHER });
    expect(sent).toHaveLength(3);
  });
});
