import { ServiceError } from "@/lib/services/errors";
import { accessEnsure, accessReset } from "./commands/access";
import { accessToken } from "./commands/access-token";
import { buildingCost } from "./commands/building-cost";
import { demoBuild } from "./commands/demo-build";
import { exportBuilding } from "./commands/export";
import { reportsAdd } from "./commands/reports-add";
import { reportsImport } from "./commands/reports-import";
import { trendsImport } from "./commands/trends-import";
import { trendsInspect } from "./commands/trends-inspect";
import { trendsWatch } from "./commands/trends-watch";
import { UsageError } from "./usage";

const COMMANDS: Record<string, { run: (args: string[]) => Promise<number>; usage: string }> = {
  "trends inspect": {
    run: trendsInspect,
    usage: "trends inspect FILE... --time-zone ZONE [--locale L] [--answer what=value]... [--json]",
  },
  "trends import": {
    run: trendsImport,
    usage: "trends import FILE... --building ID [--accept-proposals] [--answer what=value]... [--json]",
  },
  "trends watch": {
    run: trendsWatch,
    usage: "trends watch FOLDER --building ID [--once] [--every SECONDS] [--accept-proposals] [--json]",
  },
  "reports add": {
    run: reportsAdd,
    usage:
      "reports add --building ID --zone CODE|--desk CODE --vote VOTE [--wish WISH] [--at TIME] [--note TEXT] [--json]",
  },
  "reports import": {
    run: reportsImport,
    usage: "reports import FILE --building ID [--date-order mdy|dmy] [--dry-run] [--json]",
  },
  "building cost": { run: buildingCost, usage: "building cost ID [--json]" },
  export: { run: exportBuilding, usage: "export ID [--out FOLDER] [--json]" },
  "demo build": { run: demoBuild, usage: "demo build [--json]" },
  "access ensure": { run: accessEnsure, usage: "access ensure" },
  "access reset": { run: accessReset, usage: "access reset" },
  "access token": {
    run: accessToken,
    usage: "access token make|list|revoke --building ID [--collector NAME] [--token NUMBER] [--json]",
  },
};

async function main(args: string[]): Promise<number> {
  for (const words of [2, 1]) {
    const command = COMMANDS[args.slice(0, words).join(" ")];
    if (command) {
      try {
        return await command.run(args.slice(words));
      } catch (error) {
        if (error instanceof ServiceError) {
          console.error(error.message);
          return 1;
        }
        if (!(error instanceof UsageError)) throw error;
        console.error(`${error.message}\nusage: npm run cli -- ${command.usage}`);
        return 2;
      }
    }
  }
  console.error("usage:");
  for (const { usage } of Object.values(COMMANDS)) console.error(`  npm run cli -- ${usage}`);
  return 2;
}

process.exitCode = await main(process.argv.slice(2));
