import type { Progress } from "../context";
import type { ResultMemory } from "./result-memory";

/** A result of a building to be worked out: its kind by name, and the part of it, such as the zone. */
export type AnalysisJob = { buildingId: number; kind: string; part: string | null };

/** `patient` when only what occupants send by themselves has changed: such a result rests between two times. */
export type Urgency = "at-once" | "patient";

export type AnalysisFailure = { atMs: number; message: string };

/** Works results out beside the thread that answers people. */
export type Analyst = {
  /** Asks for a result; resolves when it is worked out, has failed or rests, at the latest after `mostMs`. */
  bringUpToDate(job: AnalysisJob, urgency: Urgency, mostMs: number): Promise<void>;
  /** How far it is, and how the last try failed when it did. */
  standing(job: AnalysisJob): { progress: Progress | null; failure: AnalysisFailure | null };
  /** Results as they were read last, so that each is unpacked once. */
  memory: ResultMemory;
};

export const jobKey = ({ buildingId, kind, part }: AnalysisJob): string => `${buildingId} ${subjectOf(kind, part)}`;

/** The subject that a page's result is kept under. */
export const subjectOf = (kind: string, part: string | null): string =>
  part === null ? `shown/${kind}` : `shown/${kind}/${part}`;
