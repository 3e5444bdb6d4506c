import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import path from "node:path";
import { ensurePackages, projectFolder } from "../app/_cli/install.mjs";

/** `npm test`: installs what is missing, then format, lint, types, unit tests, production build, browser tests. */

const results = path.join(projectFolder, "test-results");
let failedSteps = 0;

ensurePackages();
ensureChromium();
rmSync(results, { recursive: true, force: true });
mkdirSync(results, { recursive: true });

step("format and lint", "npm", ["run", "-s", "lint"]);
step("types", "npm", ["run", "-s", "types"]);
step("unit tests", "npx", [
  "vitest",
  "run",
  "--config",
  "test/vitest.config.mts",
  "--reporter=default",
  "--reporter=json",
  `--outputFile=${path.join(results, "unit.json")}`,
]);
if (step("production build", "npx", ["next", "build"]))
  step("browser tests", "npx", ["playwright", "test", "--config", "test/playwright.config.ts"]);

const unit = readResult("unit.json", (json) => [json.numPassedTests, json.numFailedTests]);
const browser = readResult("browser.json", ({ stats }) => [stats.expected + stats.flaky, stats.unexpected]);
const passed = unit[0] + browser[0];
const failed = unit[1] + browser[1];
console.log(`\nunit: ${unit[0]} of ${unit[0] + unit[1]}, browser: ${browser[0]} of ${browser[0] + browser[1]}`);
console.log(`${passed} passed, ${failed} failed`);
process.exit(failedSteps > 0 || failed > 0 || unit[0] === 0 || browser[0] === 0 ? 1 : 0);

function step(name, command, args) {
  console.log(`\n== ${name}`);
  const { status } = spawnSync(command, args, {
    cwd: projectFolder,
    stdio: "inherit",
    env: { ...process.env, NEXT_TELEMETRY_DISABLED: "1" },
  });
  if (status !== 0) {
    failedSteps += 1;
    console.log(`== ${name}: FAILED`);
  }
  return status === 0;
}

function readResult(file, counts) {
  const full = path.join(results, file);
  return existsSync(full) ? counts(JSON.parse(readFileSync(full, "utf8"))) : [0, 0];
}

/** The browser tests drive Debian's Chromium; it is installed when it is missing and this user may. */
function ensureChromium() {
  const wanted = process.env.CHROMIUM_PATH ?? "/usr/bin/chromium";
  if (existsSync(wanted)) return;
  console.log("Installing Debian's chromium for the browser tests...");
  for (const args of [["update"], ["install", "-y", "--no-install-recommends", "chromium", "fonts-dejavu-core"]]) {
    const { status } = spawnSync("apt-get", args, {
      stdio: "inherit",
      env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    });
    if (status !== 0) {
      console.error(`No browser at ${wanted}: install chromium, or set CHROMIUM_PATH to one.`);
      process.exit(1);
    }
  }
}
