import { smtpSink } from "../support/smtp-sink";
import { accessibilityFaults } from "./accessibility-faults";
import { beSignedIn, demoPath, expect, test } from "./fixtures";
import { newLink } from "./report-link";

test("a mail server is set up and tried, new reports are mailed, and an answer reaches its occupant", async ({
  page,
  browser,
}) => {
  const sink = await smtpSink();
  try {
    await beSignedIn(page, "demo");
    await page.goto(demoPath("/comfort-reports/mail"));
    await page.getByLabel("Name of the server").fill("127.0.0.1");
    await page.getByLabel("Port", { exact: true }).fill("none");
    await page.getByLabel("Encryption").selectOption({ index: 2 });
    await page.getByLabel("Mail comes from").fill("comfort@example.org");
    await page.getByRole("button", { name: "Keep it" }).click();
    await expect(page.getByRole("alert").filter({ hasText: "whole number" }).first()).toBeVisible();
    await expect(page.getByLabel("Mail comes from")).toHaveValue("comfort@example.org");
    await page.getByLabel("Port", { exact: true }).fill(String(sink.port));
    await page.getByRole("button", { name: "Keep it" }).click();
    await page.getByLabel("Send a test mail to").fill("me@example.org");
    await page.getByRole("button", { name: "Send a test mail" }).click();
    await expect(page.getByText("The server has taken the test mail")).toBeVisible();
    expect(sink.taken.map(({ to }) => to)).toEqual([["me@example.org"]]);

    await page.getByLabel("Mail address").fill("facilities@example.org");
    await page.getByRole("button", { name: "Add", exact: true }).click();
    await expect(page.getByRole("table", { name: "Who is told of new reports" })).toContainText("at once");
    expect(await accessibilityFaults(page, demoPath("/comfort-reports/mail"))).toEqual([]);

    const address = await newLink(page, 8);
    const context = await browser.newContext({ locale: "de-DE" });
    const occupant = await context.newPage();
    await occupant.goto(address);
    await occupant.getByLabel("Kalt", { exact: true }).check();
    await occupant.getByLabel("Wärmer", { exact: true }).check();
    await occupant.locator("summary").first().click();
    await occupant.getByRole("textbox").last().fill("jemand@example.com");
    await occupant.locator("form button[type=submit]").click();
    await expect(occupant).toHaveURL(/\/report\/follow\//);
    await expect.poll(() => sink.taken.length, { timeout: 30_000 }).toBe(2);
    const [, told] = sink.taken;
    expect(told?.to).toEqual(["facilities@example.org"]);
    expect(told?.raw).not.toContain("jemand@example.com");
    const report = /https?:\/\/\S+\/comfort-reports\/\d+/.exec(told?.text ?? "")?.[0] ?? "";

    await page.goto(report);
    await page.getByRole("textbox", { name: /^Answer to the occupant/ }).fill("Ab heute kühlen wir weniger.");
    await page.getByRole("button", { name: "Keep it" }).click();
    await expect.poll(() => sink.taken.length, { timeout: 30_000 }).toBe(3);
    const answer = sink.taken[2];
    expect(answer).toMatchObject({ to: ["jemand@example.com"], subject: "Antwort auf Ihre Meldung zur Temperatur" });
    const follow = /https?:\/\/\S+\/report\/follow\/\S+/.exec(answer?.text ?? "")?.[0] ?? "";
    await occupant.goto(follow);
    await expect(occupant.getByText("Ab heute kühlen wir weniger.")).toBeVisible();
    await page.reload();
    await expect(page.getByRole("table", { name: "What was done about this report" })).toContainText("mailed");
    await context.close();

    await page.goto(demoPath("/comfort-reports/mail"));
    await page.getByRole("button", { name: "Take facilities@example.org off" }).click();
    await expect(page.getByText("Nobody yet.")).toBeVisible();
    await page.getByRole("button", { name: "Delete it with its password" }).click();
    await expect(page.getByText("No mail is sent: there is no mail server on record.")).toBeVisible();
  } finally {
    await sink.close();
  }
});
