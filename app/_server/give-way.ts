import { readlinkSync } from "node:fs";
import { constants, setPriority } from "node:os";

/**
 * Lets the thread that calls it run only where no other wants the core (nice 19): people's requests go before what takes
 * long. Linux alone has priorities by thread; elsewhere nothing changes.
 */
export function giveWay(): void {
  try {
    const thread = Number(readlinkSync("/proc/thread-self").split("/").at(-1));
    setPriority(thread, constants.priority.PRIORITY_LOW);
  } catch {
    // Without the file system of Linux, or without the right: as it was.
  }
}
