import { expect, test } from "vitest";
import { inTransaction } from "@/db/client";
import { findComfortLinkByToken, insertComfortReport, listComfortReports } from "@/db/queries/comfort";
import { countSentByLink } from "@/db/queries/report-counts";
import { issueComfortLink } from "@/lib/services/comfort-links/manage";
import { smallOffice } from "@/test/factories/office";

function linkedOffice() {
  const { ctx, buildingId, zoneId } = smallOffice();
  const { token } = issueComfortLink(ctx, buildingId, { zoneId });
  const link = findComfortLinkByToken(ctx.db, token);
  if (!link) throw new Error("the link is gone");
  const vote = { thermalSensation: -2, preference: "warmer", zoneId, linkId: link.id, buildingId } as const;
  return { db: ctx.db, buildingId, link, vote };
}

test("a prepared insertion keeps false, leaves null what is null or not there, and takes defaults", () => {
  const { db, vote } = linkedOffice();
  const first = insertComfortReport(db, { ...vote, reportedAtMs: 1000, heaterInUse: false, fanInUse: null });
  expect(first).toMatchObject({ heaterInUse: false, fanInUse: null, draught: null, note: "", state: "received" });
  const second = insertComfortReport(db, { ...vote, reportedAtMs: 2000, draught: true, note: "by the window" });
  expect(second).toMatchObject({ heaterInUse: null, draught: true, note: "by the window" });
  expect(second.id).toBe(first.id + 1);
});

test("a statement made outside runs within a transaction, and is undone with it", () => {
  const { db, buildingId, link, vote } = linkedOffice();
  insertComfortReport(db, { ...vote, reportedAtMs: 1000 });
  const failing = () =>
    inTransaction(db, (tx) => {
      insertComfortReport(tx, { ...vote, reportedAtMs: 2000 });
      expect(countSentByLink(tx, link.id, 0)).toBe(2);
      throw new Error("the rest fails");
    });
  expect(failing).toThrow("the rest fails");
  expect(countSentByLink(db, link.id, 0)).toBe(1);
  expect(listComfortReports(db, buildingId)).toHaveLength(1);
});

test("each database has statements of its own", () => {
  const [one, other] = [linkedOffice(), linkedOffice()];
  insertComfortReport(one.db, { ...one.vote, reportedAtMs: 1000 });
  expect(countSentByLink(one.db, one.link.id, 0)).toBe(1);
  expect(countSentByLink(other.db, other.link.id, 0)).toBe(0);
  expect(findComfortLinkByToken(other.db, one.link.token)).toBeUndefined();
});
