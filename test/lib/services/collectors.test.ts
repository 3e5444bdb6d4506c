import { expect, it } from "vitest";
import { listCollectorTokens } from "@/db/queries/collectors";
import { findCollector } from "@/lib/services/collectors/find-collector";
import { makeCollectorToken } from "@/lib/services/collectors/make";
import { listCollectors, revokeCollectorToken } from "@/lib/services/collectors/manage";
import { readImportHistory } from "@/lib/services/imports/history";
import { testContext } from "@/test/support/database";
import { refusalOf } from "@/test/support/refusal";
import { insertTestBuilding } from "@/test/support/test-building";

function office() {
  const ctx = testContext();
  return { ctx, buildingId: insertTestBuilding(ctx.db) };
}

it("shows a token once, keeps only its hash, and knows its collector and building by it", () => {
  const { ctx, buildingId } = office();
  const { token, made } = makeCollectorToken(ctx, buildingId, { collector: " nightly export " });
  expect(token).toMatch(/^[\w-]{43}$/);
  expect(JSON.stringify(listCollectorTokens(ctx.db, buildingId))).not.toContain(token);
  expect(made).not.toHaveProperty("tokenHash");
  expect(findCollector(ctx, token)).toEqual({
    kind: "collector",
    name: "nightly export",
    tokenId: made.id,
    buildingId,
  });
  expect(listCollectors(ctx, buildingId)).toMatchObject([{ collector: "nightly export", lastUsedAtMs: ctx.now }]);
});

it("knows no other text, no hash and no revoked token", () => {
  const { ctx, buildingId } = office();
  const { token, made } = makeCollectorToken(ctx, buildingId, { collector: "a" });
  const hash = listCollectorTokens(ctx.db, buildingId)[0]?.tokenHash ?? "";
  for (const wrong of ["", hash, token.slice(1), `${token} `, token.toUpperCase()])
    expect(findCollector(ctx, wrong)).toBeNull();
  revokeCollectorToken(ctx, buildingId, made.id);
  revokeCollectorToken({ ...ctx, now: ctx.now + 5 }, buildingId, made.id);
  expect(findCollector(ctx, token)).toBeNull();
  expect(listCollectors(ctx, buildingId)).toMatchObject([{ revokedAtMs: ctx.now, lastUsedAtMs: null }]);
});

it("notes the last use once a minute", () => {
  const { ctx, buildingId } = office();
  const { token } = makeCollectorToken(ctx, buildingId, { collector: "a" });
  for (const [after, noted] of [
    [0, 0],
    [59_999, 0],
    [60_000, 60_000],
  ] as const) {
    findCollector({ ...ctx, now: ctx.now + after }, token);
    expect(listCollectors(ctx, buildingId)[0]?.lastUsedAtMs).toBe(ctx.now + noted);
  }
});

it("lets only facilities people make, see and revoke tokens, and a collector see nothing of its building", async () => {
  const { ctx, buildingId } = office();
  const { token, made } = makeCollectorToken(ctx, buildingId, { collector: "a" });
  const collector = { ...ctx, actor: findCollector(ctx, token) ?? ctx.actor };
  expect(collector.actor.kind).toBe("collector");
  const refused = [
    () => makeCollectorToken(collector, buildingId, { collector: "b" }),
    () => listCollectors(collector, buildingId),
    () => revokeCollectorToken(collector, buildingId, made.id),
    () => readImportHistory(collector, buildingId),
  ];
  for (const work of refused) expect((await refusalOf(work)).code).toBe("unauthenticated");
  const elsewhere = insertTestBuilding(ctx.db);
  expect((await refusalOf(() => revokeCollectorToken(ctx, elsewhere, made.id))).code).toBe("not-found");
  expect((await refusalOf(() => makeCollectorToken(ctx, buildingId, { collector: " " }))).message).toContain(
    "Name the program",
  );
});
