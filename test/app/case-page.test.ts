import { expect, test } from "vitest";
import { casePage } from "@/app/buildings/[buildingId]/proposals/[proposalId]/case/markup/case-page";
import { paybackWords, statedWords } from "@/app/buildings/[buildingId]/proposals/[proposalId]/case/view-model";
import { composeCase } from "@/lib/business-case/compose-case";
import { caseInput } from "../factories/case-input";

const page = (input = caseInput(), paper: "a4" | "letter" = "a4") =>
  casePage(composeCase(input), { paper, fontFaces: "", backHref: "/back" });

test("what people wrote is text in the document and in its running headers, never markup", () => {
  const input = caseInput();
  const title = '</style><script>alert("1")</script>';
  const html = page({ ...input, proposal: { ...input.proposal, title } });
  expect(html.includes("<script>")).toBe(false);
  expect(html.match(/<\/style>/g)).toHaveLength(1);
  expect(html).toContain("&lt;script&gt;");
});

test("every group of sections has a page of its own name with its sections in the running header", () => {
  const html = page();
  for (const titles of ["Finance · Emissions", "Sensitivity · Verification plan", "Appendix B: workings"])
    expect(html).toContain(`content:"${titles}"`);
  expect(html.match(/style="page:group\d+"/g)).toHaveLength(7);
  expect(html).toContain('counter(page) " of " counter(pages)');
});

test("the paper is the one that was asked for", () => {
  expect(page()).toContain("size:A4");
  expect(page(caseInput(), "letter")).toContain("size:letter");
});

test("loads nothing from anywhere but its icon", () => {
  const addresses = [...page().matchAll(/(?:src|href)="([^"]+)"/g)].map((each) => each[1]);
  expect(new Set(addresses)).toEqual(new Set(["/icon.svg", "/back"]));
  expect(/url\((?!#)|@import|<script/.test(page())).toBe(false);
});

test("payback says so where it may never come", () => {
  expect(paybackWords({ p10: 1.04, p50: 2, p90: 3.21 })).toBe("1.0–3.2 years, most likely 2.0");
  expect(paybackWords({ p10: 2, p50: 4, p90: null })).toMatch(/^2\.0 years or more, most likely 4\.0; .*never$/);
  expect(paybackWords({ p10: 2, p50: null, p90: null })).toMatch(/^not paid back in half/);
});

test("stated figures are printed to the cent", () => {
  const result = { symbol: "NPV", label: "net present value", value: -248.3155, unit: "USD" };
  expect(statedWords("Net present value", { formula: "", terms: [], result }, "USD")).toBe(
    "Net present value: −$248.32",
  );
});
