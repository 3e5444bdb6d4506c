import { readFileSync } from "node:fs";
import path from "node:path";
import { test as base, expect, type Page } from "@playwright/test";
import { baseUrl, SERVERS, type ServerName } from "../support/servers";

/** Console errors that a page logged; any fails the test that caused it. */
export const test = base.extend<{ consoleErrors: string[] }>({
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

export { expect, type Page };

/** Collects the console errors of a page; a page of another context has to be given here by its test. */
export function watchConsole(page: Page, errors: string[]): void {
  page.on("console", (message) => {
    if (message.type() === "error") errors.push(`${page.url()}: ${message.text()}`);
  });
  page.on("pageerror", (error) => errors.push(`${page.url()}: ${error.message}`));
}

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
