import { describe, expect, it } from "vitest";
import { readBuilding } from "@/lib/services/buildings/find";
import { createBuilding, reviseBuilding } from "@/lib/services/buildings/save";
import { ServiceError } from "@/lib/services/errors";
import { buildingInputOf } from "@/test/factories/building";
import { testContext } from "@/test/support/database";

function refusalOf(work: () => unknown): ServiceError {
  try {
    work();
  } catch (error) {
    if (error instanceof ServiceError) return error;
    throw error;
  }
  throw new Error("expected a refusal");
}

describe("setting up a building", () => {
  it("keeps occupied hours and holidays as given", () => {
    const ctx = testContext();
    const id = createBuilding(ctx, buildingInputOf());
    const building = readBuilding(ctx, id);
    expect(building.occupiedHours.weekdays[3]).toEqual([{ startMinute: 420, endMinute: 1080 }]);
    expect(building.occupiedHours.weekdays[6]).toBeUndefined();
    expect(building.occupiedHours.holidays).toEqual(["2022-05-30"]);
    expect(building.targetZoneAirTempC).toBe(23);
  });

  it("refuses occupied hours that end before they begin, and says which weekday", () => {
    const ctx = testContext();
    const error = refusalOf(() =>
      createBuilding(
        ctx,
        buildingInputOf({
          occupiedHours: { weekdays: { "2": [{ startMinute: 1080, endMinute: 420 }] }, holidays: [] },
        }),
      ),
    );
    expect(error.code).toBe("invalid");
    expect(Object.keys(error.fieldErrors)[0]).toMatch(/^occupiedHours\.weekdays\.2/);
    expect(error.message).toContain("must end after they begin");
  });

  it("refuses a blended price together with a demand charge", () => {
    const error = refusalOf(() =>
      createBuilding(
        testContext(),
        buildingInputOf({ electricityPriceKind: "blended", demandPricePerKw: 12, demandMonths: 5 }),
      ),
    );
    expect(error.fieldErrors.demandPricePerKw).toContain("already contains the demand charge");
  });

  it("reports every faulty field at once", () => {
    const error = refusalOf(() =>
      createBuilding(testContext(), buildingInputOf({ name: " ", timeZone: "Mars/Olympus", floorAreaM2: -5 })),
    );
    expect(Object.keys(error.fieldErrors).sort()).toEqual(["floorAreaM2", "name", "timeZone"]);
  });

  it("refuses anyone who is not signed in", () => {
    const ctx = testContext({ actor: { kind: "anonymous" } });
    expect(refusalOf(() => createBuilding(ctx, buildingInputOf())).code).toBe("unauthenticated");
  });

  it("keeps nothing of a revision that is refused", () => {
    const ctx = testContext();
    const id = createBuilding(ctx, buildingInputOf());
    refusalOf(() => reviseBuilding(ctx, id, buildingInputOf({ name: "Other", currency: "dollars" })));
    expect(readBuilding(ctx, id).name).toBe("Alder Court");
  });
});
