import { beSignedIn, demoPath, expect, test } from "./fixtures";

test.use({ javaScriptEnabled: false });

const FIGURES = "Variants side by side, a year each";

test("a proposal is made and changed without script, with its figures and amounts of single zones", async ({
  page,
}) => {
  // The first page of a fresh building waits for its whole analysis.
  test.setTimeout(300_000);
  await beSignedIn(page, "demo");
  await page.goto(demoPath("/proposals/new"));
  await expect(page.getByRole("table", { name: FIGURES })).toBeVisible();
  await page.getByLabel("Name", { exact: true }).fill("Made without script");
  const own = page.getByLabel("Cooling setpoint, zone 1-05, One kelvin");
  await own.fill("a lot");
  await page.getByRole("button", { name: "Save as a draft" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "Give the amount as a number" }).first()).toBeVisible();
  await expect(own).toHaveValue("a lot");
  await expect(own).toHaveAttribute("aria-invalid", "true");
  await expect(page.getByLabel("Name", { exact: true })).toHaveValue("Made without script");

  await own.fill("0.4");
  await page.getByRole("button", { name: "Save as a draft" }).click();
  await expect(page.getByRole("heading", { name: "Status: draft" })).toBeVisible();
  await expect(own).toHaveValue("0.4");
  await expect(page.getByLabel("Cooling setpoint, zone 1-06, One kelvin")).toHaveValue("");
  const savedOf = () =>
    page
      .getByRole("table", { name: FIGURES })
      .getByRole("row", { name: /^Electricity [\d,]/ })
      .textContent();
  const whole = await savedOf();

  // July alone saves less than the season, and a zone that is taken in has its field after saving.
  await page.getByLabel("From", { exact: true }).selectOption({ label: "July" });
  await page.getByLabel("To", { exact: true }).selectOption({ label: "July" });
  await page.getByLabel("Cooling setpoint, zone 1-02", { exact: true }).check();
  await page.getByRole("button", { name: "Save the draft" }).click();
  await expect(page.getByText("Saved", { exact: true })).toBeVisible();
  await expect(page.getByLabel("Cooling setpoint, zone 1-02, One kelvin")).toBeVisible();
  await page.goto(page.url());
  await expect(page.getByLabel("From", { exact: true })).toHaveValue("7");
  const least = (text: string | null): number =>
    Number((/most likely ([\d,]+)/.exec(text ?? "")?.[1] ?? "").replaceAll(",", ""));
  expect(least(await savedOf())).toBeLessThan(least(whole));
  expect(least(await savedOf())).toBeGreaterThan(0);

  await page.goto(demoPath("/proposals"));
  await expect(page.getByRole("row", { name: /Made without script/ })).toContainText("0.4 to 1");
});
