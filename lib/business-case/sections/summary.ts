import { type CaseBlock, type CaseSection, moneyRange, number, range, text } from "../case-document";
import type { CaseFinance } from "../case-finance";
import type { CaseComfortLine, CaseInput } from "../case-input";
import { openYears } from "./open-years";

/** The gravest risks, those for people; the others stand under comfort and risk. */
const RISKS_SHOWN = 3;

/** One page for whoever signs: what is asked, what it brings, what it costs, what may go wrong, how it will be proved. */
export function summarySection(input: CaseInput, finance: CaseFinance): CaseSection {
  const { proposal, saving, electricKwh, heatKwh, emissionsKgCo2 } = input;
  const { ranges, plan } = finance;
  const zones = new Set(proposal.measures.map(({ zoneCode }) => zoneCode)).size;
  const blocks: CaseBlock[] = [
    {
      kind: "paragraph",
      runs: [
        `Asked for: ${proposal.title}, in ${zones} ${zones === 1 ? "zone" : "zones"}, ${proposal.season}, ${proposal.hours}. ${proposal.purpose}`.trim(),
      ],
    },
    {
      kind: "figures",
      figures: [
        { label: "Saving in the first year", value: moneyRange(saving), note: "80 % range" },
        {
          label: "Outlay",
          value: { kind: "money", amount: plan.outlay, decimals: "whole" },
          note: plan.outlay === 0 ? "none was entered with the proposal" : "at once",
        },
        {
          label: "Simple payback",
          value: openYears(ranges.simplePaybackYears),
          note: "not discounted, first-year saving",
        },
        {
          label: `Net present value over ${plan.lifeYears} years`,
          value: moneyRange(ranges.netPresentValue),
          note: `constant prices, ${percent(plan.rate)} a year real`,
        },
        { label: "Electricity", value: range(electricKwh, "kWh a year"), note: "" },
        { label: "Heat", value: range(heatKwh, "kWh a year"), note: "" },
        { label: "Emissions", value: range(emissionsKgCo2, "kg CO₂ a year"), note: input.emissionScope },
        {
          label: "Chance that it costs more than it brings",
          value: number(ranges.lossShare * 100, 0, "%"),
          note: "share of the draws with a net present value below 0",
        },
      ],
    },
    { kind: "heading", text: "For people" },
    {
      kind: "list",
      items: input.comfort.map(comfortWords),
    },
    { kind: "heading", text: "What may go wrong, and the answer to it" },
    { kind: "list", items: input.risks.slice(0, RISKS_SHOWN).map(({ risk, answer }) => `${risk} ${answer}`) },
    { kind: "heading", text: "Decision" },
    {
      kind: "table",
      id: "decision",
      caption: "Signed by",
      columns: ["Approved, declined or sent back", "Name and office", "Date"].map((head) => ({ head, align: "text" })),
      rows: [[text(""), text(""), text("")]],
      total: null,
    },
  ];
  return { id: "summary", title: "Summary", startsPage: false, blocks };
}

/** "Cold reports a year: 61.0 now, 30.5 expected." */
function comfortWords({ label, before, after, unit, decimals }: CaseComfortLine): string {
  const sign = unit === "%" ? "\u202f%" : "";
  const per = unit === "" || unit === "%" ? "" : ` ${unit}`;
  return `${label}${per}: ${before.toFixed(decimals)}${sign} now, ${after.toFixed(decimals)}${sign} expected.`;
}

const percent = (rate: number): string => `${Number((rate * 100).toPrecision(3))} %`;
