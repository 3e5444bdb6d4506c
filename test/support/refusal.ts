import { ServiceError } from "@/lib/services/errors";

/** The refusal that `work` ends with; anything else it throws is thrown on, and an error when it goes through. */
export async function refusalOf(work: () => unknown): Promise<ServiceError> {
  try {
    await work();
  } catch (error) {
    if (error instanceof ServiceError) return error;
    throw error;
  }
  throw new Error("expected a refusal");
}
