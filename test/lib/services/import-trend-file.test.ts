import { describe, expect, it } from "vitest";
import { listPoints } from "@/db/queries/points";
import { readImportHistory } from "@/lib/services/imports/history";
import { readAnswerWords } from "@/lib/services/trend-imports/answer-words";
import { importTrendFile } from "@/lib/services/trend-imports/import-file";
import { readMappingTask } from "@/lib/services/trend-imports/mapping";
import { stageTrendFile } from "@/lib/services/trend-imports/stage";
import { addZone } from "@/lib/services/zones/save";
import { smallOffice } from "@/test/factories/office";
import { bytesOf, wideCsv } from "@/test/factories/trend-csv";
import { refusalOf } from "@/test/support/refusal";

const AIR = { "VAV-2-14 ZN-T (°F)": [72, 71, 70] };

function office() {
  const base = smallOffice();
  const bring = (name: string, bytes: Uint8Array, acceptProposals = true, ...words: string[]) =>
    importTrendFile(base.ctx, base.buildingId, { name, bytes }, { acceptProposals, answers: readAnswerWords(words) });
  return { ...base, bring };
}

describe("bringing a trend file in without a person", () => {
  it("stores nothing of points that were never mapped, and lists them with what would be proposed", async () => {
    const { ctx, buildingId, bring } = office();
    const report = await bring("a.csv", wideCsv(AIR), false);
    expect(report).toMatchObject({ outcome: "asked", samples: null, mapped: [], leftOut: [] });
    expect(report.open).toEqual([
      { name: "VAV-2-14 ZN-T", reason: expect.stringMatching(/not mapped before; proposed: zone air temp, high/) },
    ]);
    expect(listPoints(ctx.db, buildingId)).toEqual([]);
    expect(readMappingTask(ctx, buildingId).waiting).toHaveLength(1);
  });

  it("leaves out what no proposal settles, names it, and takes it in once its zone is there", async () => {
    const { ctx, buildingId, bring } = office();
    const bytes = wideCsv({ ...AIR, "VAV-7-01 ZN-T (°F)": [70, 70, 70], "Misc 7 (°F)": [1, 2, 3] });
    const first = await bring("a.csv", bytes);
    expect(first.mapped.map(({ name }) => name)).toEqual(["VAV-2-14 ZN-T"]);
    expect(first.leftOut.map(({ name }) => name).sort()).toEqual(["Misc 7", "VAV-7-01 ZN-T"]);
    expect((await bring("a.csv", bytes)).outcome).toBe("unchanged");
    addZone(ctx, buildingId, { code: "7-01" });
    const second = await bring("a.csv", bytes);
    expect(second).toMatchObject({ outcome: "imported", samples: { added: 3, changed: 0, same: 3 } });
    expect((await bring("a.csv", bytes)).outcome).toBe("unchanged");
  });

  it("does not give one quantity of a zone two points: the one that is known keeps its place", async () => {
    const { bring } = office();
    await bring("a.csv", wideCsv(AIR));
    const report = await bring("b.csv", wideCsv({ "A 2-14 ZN-T (°F)": [70, 70], ...AIR }));
    expect(report.mapped.map(({ name }) => name)).toEqual(["VAV-2-14 ZN-T"]);
    expect(report.leftOut).toEqual([
      { name: "A 2-14 ZN-T", reason: expect.stringContaining("VAV-2-14 ZN-T is already the zone air temp") },
    ]);
  });

  it("answers a file's question by the words given, and only by those", async () => {
    const { bring } = office();
    const bytes = bytesOf(["Timestamp,VAV-2-14 ZN-T (°F)", "03/04/2026 08:00,72", "03/04/2026 08:15,73"]);
    const asked = await bring("a.csv", bytes);
    expect(asked).toMatchObject({ outcome: "asked", ask: [{ what: "date-order" }], open: [] });
    const done = await bring("a.csv", bytes, true, "date-order=dmy");
    expect(done).toMatchObject({ outcome: "imported", samples: { added: 2 } });
    expect((await refusalOf(() => readAnswerWords(["date-order=ymd"]))).message).toContain("mdy or dmy");
  });

  it("takes the unit given before the one proposed, and keeps it for the next file", async () => {
    const { ctx, buildingId, bring } = office();
    const bytes = wideCsv({ "VAV-2-14 ZN-T": [22, 23, 22.5] });
    await bring("a.csv", bytes, true, "unit=degC");
    expect(listPoints(ctx.db, buildingId)[0]?.fileUnit).toBe("degC");
    const next = await bring("b.csv", wideCsv({ "VAV-2-14 ZN-T": [22, 23, 22.5, 21] }), false);
    expect(next).toMatchObject({ outcome: "imported", samples: { added: 1, changed: 0, same: 3 } });
  });

  it("leaves files alone that wait for someone else's mapping", async () => {
    const { ctx, buildingId, bring } = office();
    const other = { name: "other.csv", bytes: wideCsv({ "VAV-2-15 ZN-T (°F)": [70, 71] }) };
    const { run } = await stageTrendFile(ctx, buildingId, other);
    await bring("a.csv", wideCsv(AIR));
    expect(readImportHistory(ctx, buildingId).find((each) => each.id === run.id)).toMatchObject({
      state: "waiting",
      answers: null,
    });
  });
});
