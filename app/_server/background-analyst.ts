import { type AnalysisFailure, type AnalysisJob, type Analyst, jobKey } from "@/lib/services/kept/analyst";
import { ResultMemory } from "@/lib/services/kept/result-memory";
import type { FromThread, ToThread } from "./thread-messages";

/** A result that could not be worked out is tried again when a page asks after this long [ms]. */
const RETRY_MS = 60_000;

/** Rest after a result before it is worked out again for comfort reports alone [ms], and how many times as long as it took. */
const LEAST_REST_MS = 10_000;
const REST_TIMES = 4;

const FAULT = "There was a fault in the calculation; the server's log has it.";
const BROKE_DOWN = "The program that works it out broke down; the server's log has the reason.";

type Asked = {
  /** When it was asked for; null when it is not. */
  askedMs: number | null;
  begunMs: number | null;
  restUntilMs: number;
  progress: { done: number; of: number } | null;
  failure: AnalysisFailure | null;
  waiting: Set<() => void>;
};

export type BackgroundAnalyst = Analyst & {
  received(message: FromThread): void;
  /** The thread ended: what it was working on has failed, what waited for its turn is asked for again when a page wants it. */
  threadEnded(): void;
};

/**
 * Asks the background thread for results, each once at a time, and keeps what it tells of them. A result rests before it is
 * worked out again for comfort reports alone: they come in all day and must not keep a processor busy.
 */
export function makeBackgroundAnalyst(send: (message: ToThread) => void, clock: () => number): BackgroundAnalyst {
  const jobs = new Map<string, Asked>();
  const stateOf = (job: AnalysisJob): Asked => {
    const key = jobKey(job);
    const found = jobs.get(key) ?? {
      askedMs: null,
      begunMs: null,
      restUntilMs: 0,
      progress: null,
      failure: null,
      waiting: new Set(),
    };
    jobs.set(key, found);
    return found;
  };
  const settle = (state: Asked, failure: AnalysisFailure | null): void => {
    const tookMs = state.begunMs === null ? 0 : clock() - state.begunMs;
    const restUntilMs = clock() + Math.max(LEAST_REST_MS, REST_TIMES * tookMs);
    Object.assign(state, { askedMs: null, begunMs: null, restUntilMs, progress: null, failure });
    for (const wake of state.waiting) wake();
    state.waiting.clear();
  };

  return {
    memory: new ResultMemory(),
    bringUpToDate(job, urgency, mostMs) {
      const state = stateOf(job);
      if (state.failure && clock() - state.failure.atMs < RETRY_MS) return Promise.resolve();
      if (urgency === "patient" && clock() < state.restUntilMs) return Promise.resolve();
      if (state.askedMs === null) send({ say: "work-out", job });
      state.askedMs ??= clock();
      // Who comes later does not wait as long again: it is a long one.
      const leftMs = mostMs - (clock() - state.askedMs);
      if (leftMs <= 0) return Promise.resolve();
      return new Promise((resolve) => {
        const done = (): void => {
          clearTimeout(timer);
          state.waiting.delete(done);
          resolve();
        };
        const timer = setTimeout(done, leftMs);
        state.waiting.add(done);
      });
    },
    standing(job) {
      const { progress, failure } = stateOf(job);
      return { progress, failure };
    },
    received(message) {
      const state = stateOf(message.job);
      if (message.say === "begun") state.begunMs = clock();
      else if (message.say === "progress") state.progress = { done: message.done, of: message.of };
      else if (message.say === "done") settle(state, null);
      else settle(state, { atMs: clock(), message: FAULT });
    },
    threadEnded() {
      for (const state of jobs.values())
        if (state.askedMs !== null || state.begunMs !== null)
          settle(state, state.begunMs === null ? state.failure : { atMs: clock(), message: BROKE_DOWN });
    },
  };
}
