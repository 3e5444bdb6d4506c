import type { BrowserContext } from "@playwright/test";
import { demoPath, expect, type Page, test } from "./fixtures";
import { newLink } from "./report-link";

const ANSWERS = ["received", "kept", "refused", "other"] as const;
type Answer = (typeof ANSWERS)[number];

/** The form's own hidden fields, which a program has to send as well. */
async function hiddenFields(page: Page, address: string): Promise<Record<string, string>> {
  await page.goto(address);
  const fields = await page
    .locator("form input[type=hidden]")
    .evaluateAll((inputs) => inputs.map((each) => [(each as HTMLInputElement).name, (each as HTMLInputElement).value]));
  return Object.fromEntries(fields);
}

/** The form as a program would post it, each time with a number of its own; `from`: network address, as a proxy would tell it. */
async function post(
  context: BrowserContext,
  address: string,
  { fields, id, from }: { fields: Record<string, string>; id: string; from?: string },
): Promise<Answer> {
  const multipart = { ...fields, submissionId: id, thermalSensation: "3", preference: "cooler" };
  const headers = from ? { "x-forwarded-for": `198.51.100.1, ${from}` } : undefined;
  const response = await context.request.post(address, { multipart, headers });
  const [text, isReceipt] = [await response.text(), response.url().includes("/report/follow/")];
  if (isReceipt && text.includes("Thank you, your report is in")) return "received";
  if (isReceipt && text.includes("Thank you, your report is kept")) return "kept";
  return /role="alert"[^>]*>(?:<[^>]*>)*Very many reports/.test(text) ? "refused" : "other";
}

const tallyOf = (answers: readonly Answer[]) =>
  Object.fromEntries(ANSWERS.map((name) => [name, answers.filter((each) => each === name).length]));

test("two hundred posts through one link: the honest first one counts, the rest are told plainly, others are served", async ({
  page,
  browser,
}) => {
  const address = await newLink(page, 6);
  // An address of its own: the flood is not to use up what reports of other tests, all from this machine, may send.
  const extraHTTPHeaders = { "x-forwarded-for": "203.0.113.5" };
  const context = await browser.newContext({ locale: "en-GB", javaScriptEnabled: false, extraHTTPHeaders });
  const occupant = await context.newPage();
  await occupant.goto(address);
  await occupant.getByLabel("Cold", { exact: true }).check();
  await occupant.getByLabel("Warmer", { exact: true }).check();
  await occupant.getByText("Add more, if you like").click();
  await occupant.getByLabel("Anything else").fill("The honest one.");
  await occupant.getByRole("button", { name: "Send" }).click();
  await expect(occupant.getByRole("heading", { level: 1 })).toHaveText("Thank you, your report is in");

  const fields = await hiddenFields(occupant, address);
  const answers: Answer[] = [];
  for (let i = 0; i < 199; i++) {
    answers.push(await post(context, address, { fields, id: `flood-${i}` }));
    if (i === 150) await page.goto(demoPath("/comfort-reports"));
  }
  expect(tallyOf(answers)).toEqual({ received: 29, kept: 30, refused: 140, other: 0 });
  await page.goto(demoPath("/comfort-reports"));
  await expect(page.getByText("30 reports are kept aside")).toBeVisible();
  await expect(page.getByRole("table", { name: "Comfort reports, newest first" })).toContainText("The honest one.");
  await page.getByRole("link", { name: "Look at them" }).click();
  await page.getByRole("button", { name: "Drop" }).first().click();
  await expect(page.getByRole("button", { name: "Drop" })).toHaveCount(29);
  await context.close();
});

test("two hundred posts from one address through many links: the first count, the rest are refused, another address is served meanwhile", async ({
  page,
  browser,
}) => {
  const context = await browser.newContext({ locale: "en-GB", javaScriptEnabled: false });
  const form = await context.newPage();
  const links: { address: string; fields: Record<string, string> }[] = [];
  for (let zone = 10; zone < 18; zone++) {
    const address = await newLink(page, zone);
    links.push({ address, fields: await hiddenFields(form, address) });
  }
  const send = (n: number, from: string): Promise<Answer> => {
    const link = links[n % links.length] as (typeof links)[number];
    return post(context, link.address, { fields: link.fields, id: `address-${from}-${n}`, from });
  };
  // Twenty at a time, as a program would; from another address in the midst of them an honest one, and pages for staff.
  const flood: Answer[] = [];
  const honest: Answer[] = [];
  for (let n = 0; n < 200; n += 20) {
    const batch = Promise.all(Array.from({ length: 20 }, (_, i) => send(n + i, "203.0.113.7")));
    if (n === 0 || n === 180) {
      honest.push(await send(n, "203.0.113.8"));
      expect((await page.goto(demoPath("/comfort-reports")))?.status()).toBe(200);
    }
    flood.push(...(await batch));
  }
  expect(tallyOf(flood)).toEqual({ received: 120, kept: 60, refused: 20, other: 0 });
  expect(flood.slice(0, 100)).toEqual(Array(100).fill("received"));
  expect(flood.slice(-20)).toEqual(Array(20).fill("refused"));
  expect(honest).toEqual(["received", "received"]);
  await context.close();
});
