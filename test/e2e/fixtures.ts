import { readFileSync } from "node:fs";
import path from "node:path";
import { test as base, expect, type Locator, type Page } from "@playwright/test";
import { baseUrl, SERVERS, type ServerName } from "../support/servers";

/** Console errors that a page logged; any fails the test that caused it. Pages are as they come, with the last result. */
export const testAsItComes = base.extend<{ consoleErrors: string[] }>({
  consoleErrors: [
    async ({ page }, use) => {
      const errors: string[] = [];
      watchConsole(page, errors);
      await use(errors);
      expect(errors, "errors on the page's console").toEqual([]);
    },
    { auto: true },
  ],
});

/** The same, but an address is there only once the page shows figures of now. */
export const test = testAsItComes.extend({
  page: async ({ page, javaScriptEnabled }, use) => {
    const goto = page.goto.bind(page);
    page.goto = async (url, options) => {
      const response = await goto(url, options);
      // Without script a page with fields to fill in does not load itself again.
      if (javaScriptEnabled === false)
        while ((await page.locator(BEHIND).count()) > 0) {
          await page.waitForTimeout(500);
          await goto(url, options);
        }
      await settled(page);
      return response;
    };
    await use(page);
  },
});

export { expect, type Locator, type Page };

const BEHIND = "[data-behind]";

/** Waits until the page shows figures of now: by itself, as it does for people. */
export async function settled(page: Page): Promise<void> {
  await expect(page.locator(BEHIND)).toHaveCount(0, { timeout: 60_000 });
}

/** Collects the console errors of a page; a page of another context has to be given here by its test. */
export function watchConsole(page: Page, errors: string[]): void {
  page.on("console", (message) => {
    if (message.type() === "error") errors.push(`${page.url()}: ${message.text()}`);
  });
  page.on("pageerror", (error) => errors.push(`${page.url()}: ${error.message}`));
}

/** Where the links of a page lead. */
export const linksOf = (page: Page): Promise<(string | null)[]> =>
  page.getByRole("link").evaluateAll((all) => all.map((each) => each.getAttribute("href")));

export function signInOf(server: ServerName): { email: string; password: string } {
  return JSON.parse(readFileSync(path.join(SERVERS[server].dataFolder, "sign-in.json"), "utf8"));
}

/** Signs in through the form, as a person would. */
export async function signIn(page: Page, server: ServerName): Promise<void> {
  const { email, password } = signInOf(server);
  await page.goto(`${baseUrl(server)}/sign-in`);
  await page.getByLabel("E-mail").fill(email);
  await page.getByLabel("Password").fill(password);
  await page.getByRole("button", { name: "Sign in" }).click();
  await page.waitForURL(/\/buildings/);
}

type Cookies = Awaited<ReturnType<ReturnType<Page["context"]>["cookies"]>>;
const sessions = new Map<ServerName, Cookies>();

/** Takes up the session of an earlier sign-in, so that the form is used once a server and not once a test. */
export async function beSignedIn(page: Page, server: ServerName): Promise<void> {
  const session = sessions.get(server);
  if (session) {
    await page.context().addCookies(session);
    return;
  }
  await signIn(page, server);
  sessions.set(server, await page.context().cookies(baseUrl(server)));
}

/** Address of a page of the demo building, the only one of its server. */
export const demoPath = (path = ""): string => `${baseUrl("demo")}/buildings/1${path}`;

/** Address of a page of the building whose change is proved, the only one of its server. */
export const proofPath = (path = ""): string => `${baseUrl("proof")}/buildings/1${path}`;
