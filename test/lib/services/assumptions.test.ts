import { expect, it } from "vitest";
import { listOverrideHistory } from "@/db/queries/assumption-overrides";
import { overrideAssumption, withdrawOverride } from "@/lib/services/assumptions/override";
import { previewOverride } from "@/lib/services/assumptions/preview";
import { readAssumptions } from "@/lib/services/assumptions/resolve";
import { registerDevice } from "@/lib/services/devices/register";
import { heaterInput, smallOffice } from "@/test/factories/office";
import { refusalOf } from "@/test/support/refusal";

const ID = "supply-air-temp";

it("an override applies to its building alone, and every earlier value stays on record with who, when and why", () => {
  const { ctx, buildingId } = smallOffice();
  const current = (id = buildingId) => readAssumptions(ctx, id).find((each) => each.id === ID);
  const usual = current();
  expect(usual?.origin).toBe("default");
  overrideAssumption(ctx, buildingId, ID, { value: 12.5, low: 12, high: 13, reason: "Read at the air handler" });
  const later = { ...ctx, now: ctx.now + 86_400_000, actor: { kind: "command-line" as const, name: "command line" } };
  overrideAssumption(later, buildingId, ID, { value: 13.5, low: 13, high: 14, reason: "Reset since May" });
  expect(current()).toMatchObject({ origin: "entered", value: 13.5, low: 13, high: 14 });
  expect(current(buildingId + 1)).toEqual(usual);

  const last = { ...later, now: later.now + 86_400_000 };
  withdrawOverride(last, buildingId, ID);
  expect(current()).toEqual(usual);
  const history = listOverrideHistory(ctx.db, buildingId, ID);
  expect(
    history.map(({ value, reason, enteredBy, enteredAtMs, endedAtMs, endedBy }) => [
      value,
      reason,
      enteredBy,
      enteredAtMs,
      endedAtMs,
      endedBy,
    ]),
  ).toEqual([
    [12.5, "Read at the air handler", "Robin Vale", ctx.now, later.now, "command line"],
    [13.5, "Reset since May", "command line", later.now, last.now, "command line"],
  ]);
});

it("refuses a value outside its range, one without a reason and an assumption that is none", async () => {
  const { ctx, buildingId } = smallOffice();
  const good = { value: 12.5, low: 12, high: 13, reason: "Read at the air handler" };
  const refused = (id: string, changes: Partial<typeof good>) =>
    refusalOf(() => overrideAssumption(ctx, buildingId, id, { ...good, ...changes }));
  expect((await refused(ID, { value: 15 })).message).toMatch(/between the lowest and the highest/);
  expect((await refused(ID, { reason: "" })).fieldErrors.reason).toMatch(/Say why/);
  expect((await refused(ID, { low: Number.NaN })).fieldErrors.low).toMatch(/lowest plausible value as a number/);
  expect((await refused("colour-of-the-door", {})).code).toBe("not-found");
  expect(listOverrideHistory(ctx.db, buildingId, ID)).toEqual([]);
});

it("shows what a value would make of the cost without saving it, and needs no reason for that", async () => {
  const { ctx, buildingId } = smallOffice({ presentCoolingSetpointC: 21 });
  registerDevice(ctx, buildingId, heaterInput());
  const before = readAssumptions(ctx, buildingId);
  const effect = await previewOverride(ctx, buildingId, "heater-in-overcooled-hours-fraction", {
    value: 0.3,
    low: 0.3,
    high: 0.3,
  });
  expect(effect.before?.stated).toBeGreaterThan(effect.after?.stated as number);
  expect(effect.before?.tier).toBe(effect.after?.tier);
  expect(readAssumptions(ctx, buildingId)).toEqual(before);
  expect(listOverrideHistory(ctx.db, buildingId, ID)).toEqual([]);
  const crossed = await previewOverride(ctx, buildingId, "return-air-temp", { value: 13, low: 13, high: 13 });
  expect(crossed.after).toBeNull();
  expect(crossed.refusals.map((each) => each.code)).toContain("air-temperatures-crossed");
  expect(
    (await refusalOf(() => previewOverride(ctx, buildingId, ID, { value: 15, low: 12, high: 13 }))).message,
  ).toMatch(/between the lowest and the highest/);
});
