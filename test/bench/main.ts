import { benchAnalyse } from "./analyse";
import { benchAssess } from "./assess";
import { benchCampus } from "./campus";
import { benchChecks } from "./checks";
import { benchComplaints } from "./complaints";
import { benchCoverage } from "./coverage";
import { benchDiagnosis } from "./diagnosis";
import { benchDraws } from "./draws";
import { benchFit } from "./fit";
import { benchImport } from "./import";
import { benchInbox } from "./inbox";
import { benchKill } from "./kill";
import { benchLoad } from "./load";
import { benchProposal } from "./proposal";
import { benchRead } from "./read";
import { benchRegister } from "./register";
import { closeTargets } from "./targets";

const BENCHES: Record<string, (args: string[]) => Promise<void>> = {
  import: benchImport,
  proposal: benchProposal,
  read: benchRead,
  load: benchLoad,
  campus: benchCampus,
  inbox: benchInbox,
  kill: benchKill,
  analyse: benchAnalyse,
  assess: benchAssess,
  diagnosis: benchDiagnosis,
  fit: benchFit,
  draws: benchDraws,
  coverage: benchCoverage,
  checks: benchChecks,
  complaints: benchComplaints,
  register: benchRegister,
};

const [name = "", ...args] = process.argv.slice(2);
const bench = BENCHES[name];
if (bench === undefined) {
  process.stderr.write(`usage: npm run bench -- ${Object.keys(BENCHES).join("|")}\n`);
  process.exitCode = 2;
} else {
  await bench(args);
  closeTargets();
}
