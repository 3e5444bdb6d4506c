import { and, desc, eq, isNull } from "drizzle-orm";
import type { Queryable } from "../client";
import { importRunProfile, mappingDraft, mappingProfile, mappingProfileVersion } from "../schema/mapping-profile";

export type ProfileRow = typeof mappingProfile.$inferSelect;
export type ProfileVersionRow = typeof mappingProfileVersion.$inferSelect;
/** A version with the name of its profile. */
export type NamedVersion = ProfileVersionRow & Pick<ProfileRow, "name" | "retiredAtMs" | "retiredBy">;

/** Newest version of each profile of a building, newest first; retired ones only when asked for. */
export function listNewestVersions(db: Queryable, buildingId: number, { retired = false } = {}): NamedVersion[] {
  const of = eq(mappingProfile.buildingId, buildingId);
  const rows = db
    .select()
    .from(mappingProfileVersion)
    .innerJoin(mappingProfile, eq(mappingProfile.id, mappingProfileVersion.profileId))
    .where(retired ? of : and(of, isNull(mappingProfile.retiredAtMs)))
    .orderBy(desc(mappingProfileVersion.id))
    .all();
  const seen = new Set<number>();
  return rows.flatMap(({ mapping_profile_version: version, mapping_profile: profile }) => {
    if (seen.has(profile.id)) return [];
    seen.add(profile.id);
    const { name, retiredAtMs, retiredBy } = profile;
    return { ...version, name, retiredAtMs, retiredBy };
  });
}

export function listVersions(db: Queryable, profileId: number): ProfileVersionRow[] {
  return db
    .select()
    .from(mappingProfileVersion)
    .where(eq(mappingProfileVersion.profileId, profileId))
    .orderBy(desc(mappingProfileVersion.version))
    .all();
}

export function findProfile(db: Queryable, buildingId: number, id: number): ProfileRow | undefined {
  return db
    .select()
    .from(mappingProfile)
    .where(and(eq(mappingProfile.buildingId, buildingId), eq(mappingProfile.id, id)))
    .get();
}

/** The profile in use of that name. */
export function findProfileByName(db: Queryable, buildingId: number, name: string): ProfileRow | undefined {
  return db
    .select()
    .from(mappingProfile)
    .where(
      and(eq(mappingProfile.buildingId, buildingId), eq(mappingProfile.name, name), isNull(mappingProfile.retiredAtMs)),
    )
    .get();
}

export function insertProfile(db: Queryable, row: typeof mappingProfile.$inferInsert): ProfileRow {
  return db.insert(mappingProfile).values(row).returning().get();
}

export function updateProfile(db: Queryable, id: number, row: Partial<typeof mappingProfile.$inferInsert>): void {
  db.update(mappingProfile).set(row).where(eq(mappingProfile.id, id)).run();
}

export function insertProfileVersion(db: Queryable, row: typeof mappingProfileVersion.$inferInsert): ProfileVersionRow {
  return db.insert(mappingProfileVersion).values(row).returning().get();
}

export type RunProfile = typeof importRunProfile.$inferSelect & { name: string; version: number };

/** Keeps which version settled a run, or was made from it; a later one of the same role takes its place. */
export function saveRunProfile(db: Queryable, row: typeof importRunProfile.$inferInsert): void {
  db.insert(importRunProfile)
    .values(row)
    .onConflictDoUpdate({
      target: [importRunProfile.runId, importRunProfile.role],
      set: { profileVersionId: row.profileVersionId, remark: row.remark ?? "" },
    })
    .run();
}

export function listRunProfiles(db: Queryable, runId: number): RunProfile[] {
  return db
    .select()
    .from(importRunProfile)
    .innerJoin(mappingProfileVersion, eq(mappingProfileVersion.id, importRunProfile.profileVersionId))
    .innerJoin(mappingProfile, eq(mappingProfile.id, mappingProfileVersion.profileId))
    .where(eq(importRunProfile.runId, runId))
    .all()
    .map((row) => ({
      ...row.import_run_profile,
      name: row.mapping_profile.name,
      version: row.mapping_profile_version.version,
    }));
}

export function findMappingDraft(db: Queryable, buildingId: number): unknown {
  return db.select().from(mappingDraft).where(eq(mappingDraft.buildingId, buildingId)).get()?.draft ?? null;
}

export function saveMappingDraft(db: Queryable, row: typeof mappingDraft.$inferInsert): void {
  const { draft, updatedAtMs, updatedBy } = row;
  db.insert(mappingDraft)
    .values(row)
    .onConflictDoUpdate({ target: mappingDraft.buildingId, set: { draft, updatedAtMs, updatedBy } })
    .run();
}

export function deleteMappingDraft(db: Queryable, buildingId: number): void {
  db.delete(mappingDraft).where(eq(mappingDraft.buildingId, buildingId)).run();
}
