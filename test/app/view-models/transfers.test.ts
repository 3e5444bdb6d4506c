import { expect, test } from "vitest";
import { isSameFile } from "@/app/buildings/[buildingId]/imports/_components/transfer";
import {
  type Mark,
  megabytesText,
  rateOf,
  timeLeftText,
  withMark,
} from "@/app/buildings/[buildingId]/imports/_components/transfer-words";

test("bytes are said in MB, with a decimal where it matters", () => {
  expect([0, 1_234_567, 99_940_000, 99_960_000, 1_500_000_000].map(megabytesText)).toEqual(
    ["0.0", "1.2", "99.9", "100", "1,500"].map((digits) => `${digits}\u00a0MB`),
  );
});

test("the time left is said in the largest unit that fits, and not where it cannot be told", () => {
  expect(timeLeftText(5e6, null)).toBe("");
  expect(timeLeftText(0, 1e6)).toBe("");
  expect(timeLeftText(5e6, 1e6)).toBe("a few seconds left");
  expect(timeLeftText(45e6, 1e6)).toBe("50\u00a0s left");
  expect(timeLeftText(600e6, 1e6)).toBe("10\u00a0min left");
  expect(timeLeftText(9000e6, 1e6)).toBe("2.5\u00a0h left");
});

test("the rate is that of the last ten seconds, and begins anew after a step back", () => {
  let marks: Mark[] = [];
  for (let second = 0; second <= 20; second++)
    marks = withMark(marks, { atMs: second * 1000, bytes: second <= 10 ? second * 1e6 : 10e6 + (second - 10) * 2e6 });
  expect(rateOf(marks)).toBe(2e6);
  expect(rateOf([{ atMs: 0, bytes: 0 }])).toBeNull();
  marks = withMark(marks, { atMs: 21_000, bytes: 5e6 });
  expect(marks).toHaveLength(1);
});

test("a file is the same one by its name, size and time of last change", () => {
  const begun = {
    id: "x",
    fileName: "a.csv",
    totalBytes: 10,
    receivedBytes: 4,
    lastModifiedMs: 5,
    startedBy: "Robin Vale",
  };
  expect(isSameFile({ name: "a.csv", size: 10, lastModified: 5 }, begun)).toBe(true);
  for (const other of [{ name: "b.csv" }, { size: 11 }, { lastModified: 6 }])
    expect(isSameFile({ name: "a.csv", size: 10, lastModified: 5, ...other }, begun)).toBe(false);
});
