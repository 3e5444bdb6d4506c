import { defineConfig } from "@playwright/test";
import { baseUrl, RESULTS, SERVERS, type ServerName } from "./support/servers";

function server(name: ServerName) {
  const { port, dataFolder } = SERVERS[name];
  return {
    command: `npx tsx test/support/prepare-data.ts ${name} ${dataFolder} && exec npx next start -H 127.0.0.1 -p ${port}`,
    url: `${baseUrl(name)}/sign-in`,
    cwd: `${RESULTS}/..`,
    // Tests stand for a proxy where they send its header; all other requests come from this machine's address.
    env: { SETPOINT_LEDGER_DATA: dataFolder, SETPOINT_LEDGER_TRUSTED_PROXY: "1", NEXT_TELEMETRY_DISABLED: "1" },
    timeout: 240_000,
    reuseExistingServer: false,
    gracefulShutdown: { signal: "SIGTERM" as const, timeout: 5000 },
    stdout: "pipe" as const,
  };
}

export default defineConfig({
  testDir: "./e2e",
  outputDir: `${RESULTS}/browser`,
  workers: 1,
  timeout: 120_000,
  expect: { timeout: 15_000 },
  reporter: [["list"], ["json", { outputFile: `${RESULTS}/browser.json` }]],
  use: {
    viewport: { width: 1440, height: 900 },
    trace: "retain-on-failure",
    launchOptions: {
      executablePath: process.env.CHROMIUM_PATH ?? "/usr/bin/chromium",
      args: ["--disable-background-networking", "--disable-component-update", "--disable-sync", "--no-first-run"],
    },
  },
  webServer: [server("empty"), server("demo"), server("proof")],
});
