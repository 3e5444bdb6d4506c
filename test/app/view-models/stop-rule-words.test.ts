import { expect, it } from "vitest";
import { brokenSentence } from "@/app/buildings/[buildingId]/proposals/stop-rule-words";

it("says of a broken rule which it is, when, where and by how much, and nothing of one that holds", () => {
  const at = { figure: 25.6, on: "2026-06-12", zone: "2-14", meanC: 25.6 };
  const state = { rule: "zone-air" as const, limit: 25.5, highest: at, broken: at };
  expect(brokenSentence(state, "C")).toMatch(
    /^Zone 2-14: 25\.6\s°C on the mean of 12 Jun 2026; the limit is 25\.5\s°C\.$/,
  );
  const hot = { figure: 4, on: "2026-06-12", zone: null, meanC: null };
  expect(brokenSentence({ rule: "hot-reports", limit: 3, highest: hot, broken: hot }, "C")).toBe(
    "4 hot reports came in the seven days to 12 Jun 2026; the limit is 3 a week.",
  );
  expect(brokenSentence({ ...state, broken: null }, "C")).toBeNull();
});
