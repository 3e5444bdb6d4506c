import { describe, expect, it } from "vitest";
import { registerDevice, retireDevice } from "@/lib/services/devices/register";
import { makeMissingLinks, readLabels } from "@/lib/services/labels/read";
import { heaterInput, smallOffice } from "@/test/factories/office";

const all = { floor: "", only: [] };

describe("labels of a building", () => {
  it("lead to the page of each device that is in use, or of those asked for", () => {
    const { ctx, buildingId } = smallOffice();
    const id = registerDevice(ctx, buildingId, heaterInput());
    const gone = registerDevice(ctx, buildingId, heaterInput({ label: "H-002" }));
    registerDevice(ctx, buildingId, heaterInput({ label: "H-003", zoneCode: "2-15", deskCode: "2-15-01" }));
    retireDevice(ctx, buildingId, gone, "2025-07-01");
    const { labels } = readLabels(ctx, buildingId, { kind: "devices", ...all });
    expect(labels.map(({ head, path }) => [head, path.startsWith(`/buildings/${buildingId}/devices/`)])).toEqual([
      ["H-001", true],
      ["H-003", true],
    ]);
    expect(labels[0]).toMatchObject({
      path: `/buildings/${buildingId}/devices/${id}`,
      lines: expect.arrayContaining(["Desk 2-14-01"]),
    });
    expect(readLabels(ctx, buildingId, { kind: "devices", floor: "", only: ["H-003"] }).labels).toHaveLength(1);
  });

  it("of reports need a link each, which is made once", () => {
    const { ctx, buildingId } = smallOffice();
    const choice = { kind: "desk-reports" as const, ...all };
    expect(readLabels(ctx, buildingId, choice)).toEqual({ labels: [], missing: ["2-14-01", "2-15-01"] });
    expect(makeMissingLinks(ctx, buildingId, { ...choice, only: ["2-14-01"] })).toBe(1);
    expect(makeMissingLinks(ctx, buildingId, choice)).toBe(1);
    expect(makeMissingLinks(ctx, buildingId, choice)).toBe(0);
    const { labels, missing } = readLabels(ctx, buildingId, choice);
    expect(missing).toEqual([]);
    expect(labels.map(({ path }) => path)).toEqual(
      Array.from({ length: 2 }, () => expect.stringMatching(/^\/report\/[\w-]{22}$/)),
    );
    expect(() => makeMissingLinks(ctx, buildingId, { kind: "devices", ...all })).toThrow("need links");
  });
});
