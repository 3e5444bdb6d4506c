import { readXlsx } from "hucre/xlsx";
import { baseUrl } from "../support/servers";
import { accessibilityFaults } from "./accessibility-faults";
import { beSignedIn, demoPath, expect, test } from "./fixtures";

test.beforeEach(async ({ page }) => beSignedIn(page, "demo"));

test("from the sum over all buildings to a proposal's business case, its document and its files", async ({ page }) => {
  await page.goto(`${baseUrl("demo")}/buildings`);
  await page.getByRole("link", { name: "Savings over all buildings" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Savings over all buildings");
  const table = page.getByRole("table", { name: /^Savings by building/ });
  await expect(table.getByRole("row", { name: /All of them/ })).toContainText(/\$[\d,]+–[\d,]+ \([\d,]+\)/);
  await table.locator("summary").first().click();
  await table.getByRole("link", { name: "Warmer setpoints and lower minimum airflows" }).click();

  await expect(page.getByRole("heading", { level: 1 })).toHaveText(/^Business case \d+-1: Warmer setpoints/);
  const stated = page.locator("summary").filter({ hasText: "Net present value:" });
  const value = /−?\$[\d,]+\.\d\d/.exec((await stated.textContent()) ?? "")?.[0] ?? "no value";
  await stated.click();
  await expect(page.getByText("present value of the savings").first()).toBeVisible();

  const workbook = await page.request.get(await hrefOf(page.getByRole("link", { name: "Workbook (XLSX)" })));
  const { sheets } = await readXlsx(new Uint8Array(await workbook.body()));
  expect(sheets.map(({ name }) => name)).toContain("Cash flow");
  const csv = await page.request.get(await hrefOf(page.getByRole("link", { name: "cash flow" })));
  expect(await csv.text()).toContain("present value (USD)");
  const pdf = await page.request.get(await hrefOf(page.getByRole("link", { name: "A4", exact: true })));
  expect(pdf.headers()["content-type"]).toBe("application/pdf");
  expect((await pdf.body()).subarray(0, 5).toString()).toBe("%PDF-");

  await page.getByRole("link", { name: "Read and print, A4" }).click();
  await expect(page.getByRole("heading", { level: 2, name: "Finance" })).toBeVisible();
  await expect(page.getByText(value, { exact: true }).first()).toBeVisible();
});

test("the document reads the same without script", async ({ page, browser }) => {
  const context = await browser.newContext({ javaScriptEnabled: false });
  await context.addCookies(await page.context().cookies());
  const plain = await context.newPage();
  await plain.goto(demoPath("/proposals/1/case/document?paper=letter"));
  await expect(plain.getByRole("heading", { level: 2, name: "Appendix B: workings" })).toBeAttached();
  await context.close();
});

test("the document has no accessibility violation, and does not scroll sideways", async ({ page }) => {
  // Dozens of pages of tables in two widths: more to look through than any other page.
  test.setTimeout(360_000);
  expect(await accessibilityFaults(page, demoPath("/proposals/1/case/document"))).toEqual([]);
});

test("a case that is not there says what to do", async ({ page }) => {
  const answer = await page.request.get(demoPath("/proposals/1/case/document?issue=99"));
  expect(answer.status()).toBe(404);
  expect(await answer.text()).toBe("This proposal has no issue 99.");
  const form = await page.request.get(demoPath("/proposals/1/case/take-away?form=doc"));
  expect(await form.text()).toBe("Ask for pdf, xlsx or csv.");
});

const hrefOf = async (link: ReturnType<import("./fixtures").Page["getByRole"]>): Promise<string> =>
  new URL((await link.getAttribute("href")) ?? "", baseUrl("demo")).href;
