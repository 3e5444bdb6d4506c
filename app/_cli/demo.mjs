import { spawn } from "node:child_process";
import { existsSync, readdirSync, statSync } from "node:fs";
import { createServer } from "node:net";
import path from "node:path";
import { ensurePackages, projectFolder, run } from "./install.mjs";

/** `npm run demo`: installs, builds, makes the demo building on first use, and serves it. */

const dataFolder = process.env.SETPOINT_LEDGER_DATA ?? path.join(projectFolder, "data", "demo");
const env = { SETPOINT_LEDGER_DATA: dataFolder };

ensurePackages();
if (!isBuilt()) {
  console.log("Building the pages...");
  run("npx", ["next", "build"]);
}
run("npx", ["tsx", "app/_cli/main.ts", "demo", "build"], env);

const port = await freePort(Number(process.env.PORT ?? 3000));
console.log(`\nServing the demo building at http://127.0.0.1:${port}/ (stop with Ctrl+C)\n`);
const server = spawn("npx", ["next", "start", "-H", "127.0.0.1", "-p", String(port)], {
  cwd: projectFolder,
  stdio: "inherit",
  env: { ...process.env, ...env, NEXT_TELEMETRY_DISABLED: "1" },
});
for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, () => server.kill(signal));
server.on("exit", (code) => process.exit(code ?? 0));

/** Whether the pages were built after the last change of the sources. */
function isBuilt() {
  const built = path.join(projectFolder, ".next", "BUILD_ID");
  if (!existsSync(built)) return false;
  const builtAt = statSync(built).mtimeMs;
  return !["app", "lib", "db", "package-lock.json", "next.config.mjs"].some((name) =>
    changedAfter(path.join(projectFolder, name), builtAt),
  );
}

function changedAfter(file, moment) {
  const stat = statSync(file);
  if (!stat.isDirectory()) return stat.mtimeMs > moment;
  return readdirSync(file).some((name) => changedAfter(path.join(file, name), moment));
}

/** The wished port, or the next one that nobody listens on. */
async function freePort(wished) {
  for (let port = wished; port < wished + 50; port++) {
    const free = await new Promise((resolve) => {
      const probe = createServer()
        .once("error", () => resolve(false))
        .listen(port, "127.0.0.1", () => probe.close(() => resolve(true)));
    });
    if (free) return port;
  }
  throw new Error(`ports ${wished} to ${wished + 49} are all taken: set PORT to a free one`);
}
