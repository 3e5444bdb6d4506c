import type { CaseDocument } from "./case-document";
import { caseFinance } from "./case-finance";
import type { CaseInput } from "./case-input";
import { alternativesSection } from "./sections/alternatives";
import { appendixSections } from "./sections/appendix";
import { cautionsSection } from "./sections/cautions";
import { comfortSection } from "./sections/comfort";
import { componentsSection } from "./sections/components";
import { dataQualitySection } from "./sections/data-quality";
import { emissionsSection } from "./sections/emissions";
import { financeSection } from "./sections/finance";
import { methodSection } from "./sections/method";
import { sensitivitySection } from "./sections/sensitivity";
import { summarySection } from "./sections/summary";
import { verificationSection } from "./sections/verification";

/** A business case from what was frozen at issue, and from nothing else: the same input gives the same document. */
export function composeCase(input: CaseInput): CaseDocument {
  const finance = caseFinance(input);
  return {
    number: input.number,
    title: input.proposal.title,
    buildingName: input.building.name,
    currency: input.building.currency,
    timeZone: input.building.timeZone,
    issuedAtMs: input.issuedAtMs,
    issuedBy: input.issuedBy,
    sections: [
      summarySection(input, finance),
      methodSection(input),
      dataQualitySection(input),
      componentsSection(input),
      alternativesSection(input),
      comfortSection(input),
      cautionsSection(input),
      financeSection(input, finance),
      emissionsSection(input),
      sensitivitySection(input, finance),
      verificationSection(input),
      ...appendixSections(input, finance),
    ],
  };
}
