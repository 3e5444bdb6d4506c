import type { Context } from "@/lib/services/context";
import { now } from "./clock";
import { currentActor } from "./session";
import { getAnalyst, getStores } from "./stores";

/** What a use-case is given for this request. */
export async function requestContext(): Promise<Context> {
  return { ...getStores(), analyst: getAnalyst(), actor: await currentActor(), now: now() };
}
