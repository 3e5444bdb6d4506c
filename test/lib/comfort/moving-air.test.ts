import { describe, expect, it } from "vitest";
import { voteInMovingAir } from "@/lib/comfort/elevated-air-speed";
import { conditionOf } from "./conditions";

describe("a vote in moving air", () => {
  const at = (vr: number) => voteInMovingAir(conditionOf({ ta: 26, tr: 26, vr, rh: 50, met: 1.1, clo: 0.5 }));

  it("is that of still air at the still speed, and lower and a range above", () => {
    expect(at(0.1).low).toEqual(at(0.1).high);
    const { low, high } = at(0.6);
    if (low.status !== "ok" || high.status !== "ok") throw new Error("within limits");
    expect(low.pmv).toBeLessThan(high.pmv);
    expect(at(0.3)).not.toEqual(at(0.6));
  });

  it("is refused outside the method's limits", () => {
    expect(at(2.5).low.status).toBe("outside-limits");
  });
});
