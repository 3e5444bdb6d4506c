import { findCollector } from "@/lib/services/collectors/find-collector";
import type { UploadContext } from "@/lib/services/uploads/upload-context";
import { takeCall } from "./call-limit";
import { clientAddress } from "./client-address";
import { now } from "./clock";
import { problem, problemOf } from "./problem";
import { getStores } from "./stores";
import { uploadContext } from "./upload-context";

/** A minute: a collector that brings every point of a large building each in a call of its own stays below. */
const CALLS_A_MINUTE = 600;
const WRONG_TOKENS_A_MINUTE = 60;

/**
 * Does the work of a call that shows a collector's token; refusals become problem documents. A token that is wrong and
 * one that was revoked are answered alike.
 */
export async function asCollector(
  request: Request,
  work: (ctx: UploadContext) => Promise<Response>,
): Promise<Response> {
  const nowMs = now();
  const token = /^Bearer +([\w-]{20,200})$/i.exec(request.headers.get("authorization") ?? "")?.[1];
  const actor = token ? findCollector({ db: getStores().db, now: nowMs }, token) : null;
  const caller = actor ? `token/${actor.tokenId}` : `wrong/${(await clientAddress()) ?? "unknown"}`;
  const waitMs = takeCall(caller, actor ? CALLS_A_MINUTE : WRONG_TOKENS_A_MINUTE, nowMs);
  if (waitMs > 0)
    return problem(request, 429, "Too many calls within a minute. Wait, then go on; nothing of this call was stored.", {
      headers: { "retry-after": String(Math.ceil(waitMs / 1000)) },
    });
  if (!actor)
    return problem(
      request,
      401,
      "The call shows no token in force. Send Authorization: Bearer <token>; tokens are made on the building's imports page.",
      { headers: { "www-authenticate": 'Bearer realm="collectors"' } },
    );
  try {
    return await work(uploadContext({ ...getStores(), actor, now: nowMs }));
  } catch (error) {
    return problemOf(request, error);
  }
}
