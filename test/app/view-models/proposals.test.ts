import { expect, test } from "vitest";
import { changeSentence, wentBackSentence } from "@/app/buildings/[buildingId]/proposals/change-words";
import {
  amountField,
  fieldErrorsOf,
  leversOf,
  nameField,
  ownAmountField,
  proposalInputFromForm,
  usedPlaces,
  windowOf,
  zoneField,
} from "@/app/buildings/[buildingId]/proposals/form";
import { promiseSentence } from "@/app/buildings/[buildingId]/proposals/promise-words";
import { beginningValues, leverSentences, valuesOf } from "@/app/buildings/[buildingId]/proposals/view-model";
import type { Proof } from "@/lib/proposals/verification-result";
import { readBuilding } from "@/lib/services/buildings/find";
import { readProposal } from "@/lib/services/proposals/find";
import { draftProposal } from "@/lib/services/proposals/save";
import { addZone } from "@/lib/services/zones/save";
import { smallOffice } from "@/test/factories/office";
import { proposalInputOf } from "@/test/factories/proposal";

const verdicts = [
  { zoneId: 1, code: "1-01", floor: "1", verdict: "setpoint-first" },
  { zoneId: 2, code: "1-02", floor: "1", verdict: "both-minimum-first" },
  { zoneId: 3, code: "1-03", floor: "1", verdict: "healthy" },
];
const building = { temperatureUnit: "F" as const, name: "Alder Court", currency: "USD" };

test("a new proposal begins with what the diagnosis proposes, and with the zones of a filter", () => {
  const values = beginningValues(building, { building: null, verdicts }, null);
  expect(values[zoneField(1)]).toBe("cooling-setpoint");
  expect(values[zoneField(2)]).toBe("minimum-airflow,cooling-setpoint");
  expect(values[zoneField(3)]).toBeUndefined();
  expect(usedPlaces(values)).toEqual([0, 1, 2]);
  const filtered = beginningValues(building, { building: null, verdicts }, [3]);
  expect(filtered[zoneField(3)]).toBe("cooling-setpoint");
  expect(filtered[zoneField(1)]).toBeUndefined();
});

test("levers of a variant are its amounts in each zone that has the lever", () => {
  const values = {
    [zoneField(4)]: "cooling-setpoint,schedule",
    [amountField(1, "cooling-setpoint")]: "1.5",
    [amountField(1, "schedule")]: "0.5",
    [amountField(0, "cooling-setpoint")]: "3",
  };
  expect(leversOf(values, 1)).toEqual([
    { zoneId: 4, lever: "cooling-setpoint", amount: 1.5 },
    { zoneId: 4, lever: "schedule", amount: 0.5 },
  ]);
});

test("a zone has an amount of its own, and the variant's where its field is empty", () => {
  const values = {
    [nameField(0)]: "Warmer",
    [zoneField(4)]: "cooling-setpoint",
    [zoneField(5)]: "cooling-setpoint",
    [zoneField(6)]: "cooling-setpoint",
    [amountField(0, "cooling-setpoint")]: "1.5",
    [ownAmountField(0, 5, "cooling-setpoint")]: "0.5",
    [ownAmountField(0, 6, "cooling-setpoint")]: "0",
    [ownAmountField(0, 4, "schedule")]: "2",
  };
  expect(leversOf(values, 0).map(({ amount }) => amount)).toEqual([1.5, 0.5, 0]);
  expect(proposalInputFromForm(values, "C").variants[0]?.levers).toHaveLength(2);
});

test("amounts of zones come back as they were: the usual one is the variant's, others are the zones' own", () => {
  const { ctx, buildingId, zoneId, otherZoneId } = smallOffice();
  const third = addZone(ctx, buildingId, { code: "2-16", floorAreaM2: 60 });
  const amounts = [1, 1, 0.4];
  const levers = [zoneId, otherZoneId, third].map((zoneId, k) => ({
    zoneId,
    lever: "cooling-setpoint" as const,
    amount: amounts[k] ?? 0,
  }));
  const variants = [
    { name: "Warmer", levers },
    { name: "Fewer", levers: levers.slice(0, 2) },
  ];
  const id = draftProposal(ctx, buildingId, proposalInputOf(0, { variants }));
  const shown = readBuilding(ctx, buildingId);
  const values = valuesOf(readProposal(ctx, buildingId, id), shown);
  expect(values[amountField(0, "cooling-setpoint")]).toBe("1");
  expect(values[ownAmountField(0, third, "cooling-setpoint")]).toBe("0.4");
  expect(values[ownAmountField(1, third, "cooling-setpoint")]).toBe("0");
  expect(proposalInputFromForm(values, shown.temperatureUnit).variants).toEqual(variants);
  expect(leverSentences(levers, "C")).toEqual(["Cooling setpoint raised by 0.4 to 1\u2009K in 3 zones"]);
  expect(leverSentences(levers, "F")).toEqual([
    "Cooling setpoint raised by 0.4 to 1\u2009K (0.7 to 1.8\u00a0°F) in 3 zones",
  ]);
});

test("an amount of a zone that is refused has its message at its own field", () => {
  const values = {
    [nameField(0)]: "Warmer",
    [nameField(2)]: "Warmest",
    [zoneField(4)]: "cooling-setpoint",
    [amountField(2, "cooling-setpoint")]: "1",
    [ownAmountField(2, 4, "cooling-setpoint")]: "a lot",
  };
  expect(fieldErrorsOf({ "variants.1.levers.0.amount": "no number" }, values)).toEqual({
    [ownAmountField(2, 4, "cooling-setpoint")]: "no number",
  });
});

test("season and hours are read as far as they can be", () => {
  const values = beginningValues(building, { building: null, verdicts }, null);
  expect(windowOf(values)).toEqual({ seasonFromMonth: 5, seasonToMonth: 9, fromMinute: 420, toMinute: 1080 });
  expect(windowOf({ ...values, from: "seven" })).toMatchObject({ fromMinute: 0, toMinute: 1440 });
});

test("a promise stands beside its proof in words", () => {
  const promise = { p10: 7, p50: 9.8, p90: 13 };
  const proof = { id: "energy", change: 25, low: 10, high: 40, confidence: 0.9 } as Proof;
  expect(promiseSentence(promise, proof)).toMatch(/^9\.80?.kWh .* 7\.?0?0? to 13\.?0? .*: the two agree/);
  expect(promiseSentence(promise, { ...proof, low: 14 })).toMatch(/more than was promised/);
  expect(promiseSentence(promise, { ...proof, low: -3, high: 5 })).toMatch(/less than was promised/);
  expect(promiseSentence(promise, undefined)).toMatch(/leaves out/);
});

test("a form goes to the use-case and comes back as it was", () => {
  const { ctx, buildingId, zoneId } = smallOffice();
  const id = draftProposal(ctx, buildingId, proposalInputOf(zoneId));
  const shown = readBuilding(ctx, buildingId);
  const values = valuesOf(readProposal(ctx, buildingId, id), shown);
  expect(values.zoneAirTemp).toBe("77.9");
  const input = proposalInputFromForm(values, shown.temperatureUnit);
  const { plan, ...rest } = proposalInputOf(zoneId);
  expect(input).toMatchObject(rest);
  expect(input.plan.stopRules.zoneAirTempC).toBeCloseTo(plan.stopRules.zoneAirTempC, 6);
});

test("what is typed wrong stays wrong, and its message stands at its field", () => {
  const values = beginningValues(building, { building: null, verdicts }, null);
  const input = proposalInputFromForm({ ...values, from: "seven", stepKPerWeek: "a lot" }, "F");
  expect(input.fromMinute).toBeNaN();
  expect(input.plan.stepKPerWeek).toBeNaN();
  expect(
    fieldErrorsOf({
      fromMinute: "a",
      "plan.stopRules.zoneAirTempC": "b",
      "variants.1.levers.0.amount": "c",
      title: "d",
    }),
  ).toEqual({ from: "a", zoneAirTemp: "b", [nameField(1)]: "c", title: "d" });
});

test("a change is said with its zone, its values and its day", () => {
  const at = Date.UTC(2026, 2, 3, 18) / 1000;
  const shown = { temperatureUnit: "C" as const, timeZone: "America/Chicago" };
  expect(
    changeSentence({ code: "2-14", setting: "cooling-setpoint", atUtcSeconds: at, fromC: 21.5, toC: 22.5 }, shown),
  ).toMatch(/Zone 2-14: cooling setpoint from 21\.5.°C to 22\.5.°C on 3 Mar 2026/);
  expect(wentBackSentence({ code: "2-14", back: { atUtcSeconds: at, toC: 21.5 } }, shown)).toMatch(
    /Setpoint in zone 2-14 went back to 21\.5.°C on 3 Mar 2026/,
  );
});
