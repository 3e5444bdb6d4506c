import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, statSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

/** The project's folder, whatever folder the command was given in. */
export const projectFolder = fileURLToPath(new URL("../..", import.meta.url));

/** Runs a command with its output shown; stops this program with the command's exit code when it fails. */
export function run(command, args, env = {}) {
  const result = spawnSync(command, args, {
    cwd: projectFolder,
    stdio: "inherit",
    env: { ...process.env, NEXT_TELEMETRY_DISABLED: "1", ...env },
  });
  if (result.error) throw result.error;
  if (result.status !== 0) process.exit(result.status ?? 1);
}

/** Refuses a Node that the database driver does not run on, then installs the locked packages unless they are in place. */
export function ensurePackages() {
  const [major, minor] = process.versions.node.split(".").map(Number);
  if (major !== 20 || minor < 15) {
    console.error(`This project runs on Node 20.15 or a later 20; this is ${process.version}.`);
    process.exit(1);
  }
  const lock = path.join(projectFolder, "package-lock.json");
  const installed = path.join(projectFolder, "node_modules", ".package-lock.json");
  const current = existsSync(installed) && statSync(installed).mtimeMs >= statSync(lock).mtimeMs;
  if (current && lockedNext() === installedNext()) return;
  console.log("Installing packages (the database driver may be compiled, which takes a minute or two)...");
  run("npm", ["ci", "--no-audit", "--no-fund"]);
}

function lockedNext() {
  const lock = JSON.parse(readFileSync(path.join(projectFolder, "package-lock.json"), "utf8"));
  return lock.packages["node_modules/next"]?.version;
}

function installedNext() {
  const file = path.join(projectFolder, "node_modules", "next", "package.json");
  return existsSync(file) ? JSON.parse(readFileSync(file, "utf8")).version : undefined;
}
