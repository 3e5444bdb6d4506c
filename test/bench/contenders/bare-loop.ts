import { spawn } from "node:child_process";
import { once } from "node:events";

const PROGRAM = `
  const { monitorEventLoopDelay } = require("node:perf_hooks");
  const delay = monitorEventLoopDelay({ resolution: 1 });
  process.on("message", () => process.send(delay.max / 1e6, () => process.disconnect()));
  setTimeout(() => { delay.enable(); process.send("ready"); }, 50);
`;

/**
 * A process that has nothing to do, to see how late its event loop is all the same: what the machine's other work does to
 * anyone. `stop` gives its longest delay [ms].
 */
export async function startBareLoop(): Promise<{ stop(): Promise<number> }> {
  const child = spawn(process.execPath, ["-e", PROGRAM], { stdio: ["ignore", "ignore", "inherit", "ipc"] });
  await once(child, "message");
  return {
    async stop() {
      const answer = once(child, "message");
      child.send("stop");
      return Number((await answer)[0]);
    },
  };
}
