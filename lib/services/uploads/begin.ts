import { randomBytes } from "node:crypto";
import { z } from "zod";
import { insertUpload, listReceivingUploads } from "@/db/queries/uploads";
import { actorName, requireSender } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";
import { expireUploads } from "./expire";
import { plainFileName } from "./file-name";
import { refuseWithoutRoom } from "./room";
import type { UploadContext } from "./upload-context";
import { type UploadView, uploadView } from "./upload-view";

/** More at the same time are held off: someone has left many behind, or a program begins again and again. */
const MOST_UNDER_WAY = 200;

const uploadInput = z.object({
  fileName: z.string(),
  totalBytes: z
    .number("Say how many bytes the file has.")
    .int("Say how many bytes the file has.")
    .min(1, "The file is empty: export it again."),
  lastModifiedMs: z.number().int().nullable().default(null),
  declaredSha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/, "A SHA-256 has 64 hexadecimal digits.")
    .nullable()
    .default(null),
});
export type UploadInput = z.input<typeof uploadInput>;

/** Begins an upload in parts of one trend file; its parts then go to the id that comes back. */
export async function beginUpload(ctx: UploadContext, buildingId: number, input: UploadInput): Promise<UploadView> {
  const actor = requireSender(ctx, buildingId);
  findBuildingOrRefuse(ctx, buildingId);
  const { fileName, ...values } = parseInput(uploadInput, input);
  await expireUploads(ctx);
  if (listReceivingUploads(ctx.db, buildingId).length >= MOST_UNDER_WAY)
    throw new ServiceError(
      "too-many",
      `${MOST_UNDER_WAY} uploads to this building are under way. Finish or discard some of them first.`,
    );
  refuseWithoutRoom(ctx, values.totalBytes);
  const id = randomBytes(32).toString("base64url");
  await ctx.passing.make(id);
  const row = insertUpload(ctx.db, {
    ...values,
    id,
    buildingId,
    fileName: plainFileName(fileName),
    kind: "trends",
    state: "receiving",
    startedAtMs: ctx.now,
    startedBy: actorName(actor),
    lastPartAtMs: ctx.now,
  });
  return uploadView(row, 0);
}
