import { inTransaction } from "@/db/client";
import {
  findProfile,
  findProfileByName,
  listNewestVersions,
  listRunProfiles,
  listVersions,
  updateProfile,
} from "@/db/queries/mapping-profiles";
import { listZones } from "@/db/queries/zones";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { contentOf, type ProfileContent } from "./profile-content";

export type ListedProfile = {
  id: number;
  name: string;
  version: number;
  content: ProfileContent;
  fileName: string;
  madeAtMs: number;
  madeBy: string;
  retiredAtMs: number | null;
  retiredBy: string | null;
  /** Older versions, newest first. */
  earlier: { version: number; fileName: string; madeAtMs: number; madeBy: string }[];
};

/** The profiles of a building, those in use first, each by its newest version. */
export function listProfiles(
  ctx: Context,
  buildingId: number,
): { profiles: ListedProfile[]; zones: Map<number, string> } {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const profiles = listNewestVersions(ctx.db, buildingId, { retired: true })
    .map(({ profileId, content, ...version }) => ({
      ...version,
      id: profileId,
      content: contentOf(content),
      earlier: listVersions(ctx.db, profileId).slice(1),
    }))
    .sort((a, b) => Number(a.retiredAtMs !== null) - Number(b.retiredAtMs !== null));
  return { profiles, zones: new Map(listZones(ctx.db, buildingId).map((zone) => [zone.id, zone.code])) };
}

/** Gives a profile another name; refused when a profile in use has it. */
export function renameProfile(ctx: Context, buildingId: number, profileId: number, wished: string): void {
  requireFacilities(ctx);
  const name = wished.trim();
  if (name === "" || name.length > 120)
    throw new ServiceError("invalid", "Give the profile a name of 1 to 120 characters.", {
      name: "Give the profile a name of 1 to 120 characters.",
    });
  inTransaction(ctx.db, (tx) => {
    const profile = profileInUse(findProfile(tx, buildingId, profileId));
    const other = findProfileByName(tx, buildingId, name);
    if (other && other.id !== profile.id)
      throw new ServiceError("conflict", `Another profile is called "${name}".`, {
        name: `Another profile is called "${name}".`,
      });
    updateProfile(tx, profile.id, { name });
  });
}

/** Takes a profile out of use: it stays on record and settles no further file. */
export function retireProfile(ctx: Context, buildingId: number, profileId: number): void {
  const actor = requireFacilities(ctx);
  inTransaction(ctx.db, (tx) => {
    const profile = profileInUse(findProfile(tx, buildingId, profileId));
    updateProfile(tx, profile.id, { retiredAtMs: ctx.now, retiredBy: actorName(actor) });
  });
}

function profileInUse<P extends { retiredAtMs: number | null }>(profile: P | undefined): P {
  if (!profile) throw new ServiceError("not-found", "This profile does not exist.");
  if (profile.retiredAtMs !== null) throw new ServiceError("conflict", "This profile was retired before.");
  return profile;
}

/** Sentences about the profile that settled a file and the one that was made from it; for the page of the import. */
export function readRunProfileSentences(ctx: Pick<Context, "db" | "actor">, runId: number): string[] {
  requireFacilities(ctx as Context);
  return listRunProfiles(ctx.db, runId).map(({ role, name, version, remark }) =>
    role === "settled-by"
      ? `Settled without a question: ${remark}`
      : `Its mapping is kept as profile "${name}", version ${version}.`,
  );
}
