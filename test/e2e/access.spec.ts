import { baseUrl } from "../support/servers";
import { FACILITIES_PAGES } from "./demo-pages";
import { beSignedIn, demoPath, expect, linksOf, signIn, signInOf, test } from "./fixtures";

test("sends someone who is not signed in from every facilities page to sign-in", async ({ page }) => {
  for (const address of FACILITIES_PAGES) {
    await page.goto(address);
    await expect(page.getByRole("heading", { level: 1 }), address).toHaveText("Sign in");
    await expect(page.getByRole("navigation"), address).toHaveCount(0);
    expect(new URL(page.url()).pathname, address).toBe("/sign-in");
  }
});

test("leads back to the page that was asked for", async ({ page }) => {
  await page.goto(demoPath("/zones/1"));
  const { email, password } = signInOf("demo");
  await page.getByLabel("E-mail").fill(email);
  await page.getByLabel("Password").fill(password);
  await page.getByRole("button", { name: "Sign in" }).click();
  await page.waitForURL(/\/zones\/1/);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(/^Zone /);
});

test("answers a wrong password and an unknown address alike, and keeps the address", async ({ page }) => {
  const { email } = signInOf("demo");
  await page.goto(`${baseUrl("demo")}/sign-in`);
  for (const [address, password] of [
    [email, "not the password"],
    ["nobody@example.com", "not the password"],
  ] as const) {
    await page.getByLabel("E-mail").fill(address);
    await page.getByLabel("Password").fill(password);
    await page.getByRole("button", { name: "Sign in" }).click();
    await expect(page.getByRole("alert").filter({ hasText: "not right" })).toHaveText(
      "The e-mail address or the password is not right.",
    );
    await expect(page.getByLabel("E-mail")).toHaveValue(address);
    await expect(page.getByLabel("Password")).toHaveValue("");
  }
});

test("never leads to another site after sign-in", async ({ page }) => {
  await page.goto(`${baseUrl("demo")}/sign-in?next=${encodeURIComponent("//elsewhere.example/buildings")}`);
  const { email, password } = signInOf("demo");
  await page.getByLabel("E-mail").fill(email);
  await page.getByLabel("Password").fill(password);
  await page.getByRole("button", { name: "Sign in" }).click();
  await page.waitForURL(`${baseUrl("demo")}/buildings`);
});

test("ends the session at sign-out, also for a copy of its cookie", async ({ page, browser }) => {
  await signIn(page, "demo");
  const cookies = await page.context().cookies();
  await page.getByRole("button", { name: "Sign out" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Sign in");
  await page.goto(demoPath("/devices"));
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Sign in");
  const copy = await browser.newContext();
  await copy.addCookies(cookies);
  const other = await copy.newPage();
  await other.goto(demoPath("/devices"));
  await expect(other.getByRole("heading", { level: 1 })).toHaveText("Sign in");
  await copy.close();
});

test("takes no upload and no form from someone who is not signed in, nor from another site", async ({
  request,
  page,
}) => {
  const files = { name: "zones.csv", mimeType: "text/csv", buffer: Buffer.from("zone\nX-1\n") };
  const anonymous = await request.post(demoPath("/imports/upload"), {
    multipart: { kind: "zones", files },
    maxRedirects: 0,
  });
  expect(anonymous.status()).toBe(303);
  expect(anonymous.headers().location).toMatch(/^\/sign-in/);
  await beSignedIn(page, "demo");
  const foreign = await page.request.post(demoPath("/imports/upload"), {
    multipart: { kind: "zones", files },
    headers: { origin: "http://elsewhere.example" },
    maxRedirects: 0,
  });
  expect(foreign.status()).toBe(403);
  await page.goto(demoPath("/zones"));
  await expect(page.getByRole("link", { name: "X-1" })).toHaveCount(0);
});

test("shows nothing but the form behind an occupant's link, and nothing behind a made-up one", async ({
  page,
  browser,
  consoleErrors,
}) => {
  await beSignedIn(page, "demo");
  await page.goto(demoPath("/comfort-reports/links"));
  await page.getByLabel("Zone", { exact: true }).selectOption({ index: 1 });
  await page.getByRole("button", { name: "Make the link" }).click();
  await expect(page.getByRole("status").filter({ hasText: "The link is in the list below" })).toBeVisible();
  const address =
    (await page
      .getByRole("link", { name: /\/report\// })
      .first()
      .textContent()) ?? "";
  const buildingName = (await page.getByRole("banner").getByRole("link").nth(1).textContent()) ?? "";
  const fresh = await browser.newContext();
  const occupant = await fresh.newPage();
  occupant.on("pageerror", (error) => consoleErrors.push(error.message));
  await occupant.goto(address);
  await expect(occupant.getByRole("heading", { level: 1 })).toHaveText("How is the temperature where you sit?");
  // Its other languages are all that it leads to.
  await expect(occupant.getByRole("navigation")).toHaveCount(1);
  const { pathname } = new URL(address);
  expect(await linksOf(occupant)).toEqual(["es", "fr", "de"].map((language) => `${pathname}?language=${language}`));
  expect(buildingName.length).toBeGreaterThan(3);
  expect(await occupant.content()).not.toContain(buildingName);
  await occupant.goto(`${baseUrl("demo")}/report/made-up-token`);
  await expect(occupant.getByRole("heading", { level: 1 })).toHaveText("This link is no longer in use");
  await fresh.close();
});
