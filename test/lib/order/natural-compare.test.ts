import fc from "fast-check";
import { expect, it } from "vitest";
import { naturalCompare } from "@/lib/order/natural-compare";

it.each([
  [
    ["VAV-10", "VAV-1", "VAV-2"],
    ["VAV-1", "VAV-2", "VAV-10"],
  ],
  [
    ["2-14", "10-01", "2-2"],
    ["2-2", "2-14", "10-01"],
  ],
  [
    ["1-02-D11", "1-02-D2", "1-02"],
    ["1-02", "1-02-D2", "1-02-D11"],
  ],
  [
    ["b", "A", "a", "B"],
    ["A", "a", "B", "b"],
  ],
])("%j is listed as %j", (names, listed) => {
  expect([...names].sort(naturalCompare)).toEqual(listed);
});

it("is one order, however the names come", () => {
  const names = fc.array(fc.stringMatching(/^[A-Ca-c]{0,2}-?\d{0,3}$/), { maxLength: 12 });
  fc.assert(
    fc.property(names, (given) => {
      const sorted = [...given].sort(naturalCompare);
      expect([...given].reverse().sort(naturalCompare)).toEqual(sorted);
    }),
  );
});
