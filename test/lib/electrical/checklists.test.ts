import { describe, expect, it } from "vitest";
import { CHECKLIST_IDS, CLEARANCE_M, checklistFor, ELEMENT_LIMIT_C } from "@/lib/electrical/inspection/checklists";
import { compareWithCase, loadCheckValues } from "../../support/check-values";

const heater = { kind: "space-heater", isContact: false } as const;
const idsOf = (...args: Parameters<typeof checklistFor>) => checklistFor(...args).map(({ id }) => id);

describe("checklists", () => {
  for (const check of loadCheckValues<object>("electrical/clearance").cases)
    it(check.name, () => compareWithCase(check, { clearanceM: CLEARANCE_M, elementLimitC: ELEMENT_LIMIT_C }));

  it("give every item a basis, a fault and a severity of their own", () => {
    for (const checklist of CHECKLIST_IDS)
      for (const item of checklistFor(checklist, heater)) {
        expect(item.basis.length, item.id).toBeGreaterThan(5);
        expect(item.fault.length, item.id).toBeGreaterThan(10);
      }
  });

  it("ask mats and cushions for no clearance, and fans for neither clearance nor circuit", () => {
    expect(idsOf("us-ifc-2018", { kind: "space-heater", isContact: true })).not.toContain("clearance");
    const fan = idsOf("us-ifc-2018", { kind: "personal-fan", isContact: false });
    expect(fan).toContain("fan-guard");
    for (const id of ["clearance", "circuit-over-rating", "circuit-over-limit", "extension-lead"])
      expect(fan).not.toContain(id);
  });

  it("differ by jurisdiction: authorisation is law in US federal buildings and policy elsewhere, tests are British", () => {
    const severityOf = (checklist: (typeof CHECKLIST_IDS)[number], id: string) =>
      checklistFor(checklist, heater).find((item) => item.id === id)?.severity;
    expect(severityOf("us-federal", "not-authorised")).toBe("take-out-of-use");
    expect(severityOf("us-ifc-2018", "not-authorised")).toBe("house-policy");
    expect(severityOf("uk-2013", "test-overdue")).toBe("schedule");
    expect(severityOf("us-ifc-2018", "test-overdue")).toBeUndefined();
    expect(idsOf("uk-2013", heater)).not.toContain("hospital");
  });
});
