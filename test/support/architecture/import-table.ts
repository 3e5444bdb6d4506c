/**
 * Who may import whom. An area is a folder (or one file); the longest that a path begins with counts, and components
 * are an area wherever they stand. `values` are imports that run; `types` may be imported as types besides. An entry
 * names an area ("lib/time"), one file of an area ("lib/trends/point-kind"), a package ("zod") or Node's own modules
 * ("node:*"). Within itself an area is free.
 */
export type Allowance = { values: readonly string[]; types?: readonly string[] };

const FOUNDATIONS = [
  "lib/units",
  "lib/time",
  "lib/money",
  "lib/order",
  "lib/statistics",
  "lib/findings",
  "lib/working",
];

const ENGINEERING = [
  "lib/comfort",
  "lib/electrical",
  "lib/trends",
  "lib/energy-model",
  "lib/finance",
  "lib/devices",
  "lib/comfort-reports",
];

const PURE_LIB = [
  ...FOUNDATIONS,
  ...ENGINEERING,
  "lib/assumptions",
  "lib/importers",
  "lib/overcooling",
  "lib/proposals",
  "lib/business-case",
];

/** Folders that may know nothing but their arguments: no clock, chance, environment, files or network. */
export const PURE_AREAS: readonly string[] = PURE_LIB;

export const COMPONENTS = "app/**/_components";

/** Lists of kinds and classes: constants, no calculations. */
const CONSTANTS = [
  "lib/trends/point-kind",
  "lib/electrical/device-kind",
  "lib/electrical/device-classes",
  "lib/electrical/device-status",
  "lib/electrical/control-effect",
  "lib/electrical/circuit/circuit-kinds",
  "lib/electrical/circuit/rule-sets",
  "lib/electrical/inspection/checklists",
  "lib/electrical/inspection/inspection-words",
  "lib/assumptions/system-type",
  "lib/trends/zone-state",
  "lib/trends/diagnosis/verdict-stance",
  "lib/comfort-reports/thermal-sensation",
  "lib/comfort-reports/answers",
  "lib/comfort-reports/report-state",
  "lib/comfort/ensembles",
  "lib/comfort/activity",
  "lib/comfort/desk-fan",
  "lib/importers/register/register-mapping",
  "lib/electrical/walk-entry",
  "lib/comfort-reports/temperature-guidance",
  "lib/proposals/lever",
  "lib/proposals/proposal-status",
  "lib/proposals/live-picture",
  "lib/proposals/live-circuit",
  "lib/proposals/setpoint-change",
  "lib/proposals/verification-plan",
];

/** Files that people download to fill in. */
const TEMPLATES = ["lib/importers/tables/templates"];

/** Where a subject's findings and cautions have their sentences. */
const SENTENCES = [
  "lib/electrical/findings",
  "lib/electrical/circuit/circuit-findings",
  "lib/electrical/cautions",
  "lib/electrical/plug-log/findings",
  "lib/importers/plug-log/plug-log-read",
  "lib/trends/findings",
  "lib/trends/quantity-words",
  "lib/trends/diagnosis/verdict-words",
  "lib/trends/diagnosis/evidence-words",
  "lib/trends/quality/findings",
  "lib/trends/quality/consequence-words",
  "lib/overcooling/findings",
  "lib/energy-model/findings",
  "lib/energy-model/meter/meter-words",
  "lib/comfort-reports/control-then",
  "lib/proposals/live/left-out",
  "lib/comfort-reports/disclosure/disclosure-words",
  "lib/comfort-reports/disclosure/disclose-counts",
];

/** Calculations that a form does while it is filled in, with the same code as the use-case that saves it. */
const LIVE_CALCULATIONS = [
  "lib/electrical/device-sheet",
  "lib/electrical/resolved-setting",
  "lib/overcooling/live-effect",
  "lib/proposals/live/live-picture",
  "lib/proposals/live/cost-curve",
  "lib/proposals/trial-calendar",
  "lib/proposals/window-words",
  "lib/proposals/acting-window",
  "lib/proposals/season-calendar",
];

const NEXT_AND_REACT = ["next", "react", "react-dom", "@fontsource-variable/source-sans-3"];
const STORES = ["db/client.ts", "db/trends", "db/results.ts", "db/uploads.ts", "db/passing-files.ts"];

const rowsFor = (areas: readonly string[], row: (area: string) => Allowance): Record<string, Allowance> =>
  Object.fromEntries(areas.map((area) => [area, row(area)]));

export const IMPORT_TABLE: Readonly<Record<string, Allowance>> = {
  ...rowsFor(FOUNDATIONS, () => ({ values: [], types: FOUNDATIONS })),
  "lib/time": { values: ["temporal-polyfill"], types: FOUNDATIONS },
  ...rowsFor(ENGINEERING, () => ({ values: FOUNDATIONS })),
  "lib/assumptions": { values: ["lib/units", "lib/findings"] },
  "lib/importers": {
    values: [...FOUNDATIONS, ...CONSTANTS, "zod", "papaparse", "yauzl", "hucre", "node:buffer"],
    types: ["lib/trends", "lib/electrical", "lib/devices"],
  },
  "lib/overcooling": { values: [...FOUNDATIONS, ...ENGINEERING, "lib/assumptions"] },
  "lib/proposals": { values: [...FOUNDATIONS, ...ENGINEERING, "lib/assumptions", "lib/overcooling"] },
  "lib/business-case": {
    values: [...FOUNDATIONS, ...ENGINEERING, "lib/assumptions", "lib/overcooling", "lib/proposals"],
  },
  "lib/services": {
    values: [...PURE_LIB, ...STORES, "db/queries", "db/schema", "zod", "node:*"],
  },
  /** Files to take away: the one place that writes CSV and workbooks. */
  "lib/services/exports": {
    values: [...PURE_LIB, ...STORES, "db/queries", "db/schema", "lib/services", "zod", "node:*", "papaparse", "hucre"],
  },
  /** Mail is handed over by the mail library. */
  "lib/services/report-mail": {
    values: [...PURE_LIB, ...STORES, "db/queries", "lib/services", "zod", "nodemailer"],
  },
  /** Photos are made smaller, and their metadata is left out, by the image library. */
  "lib/services/photos": { values: [...PURE_LIB, ...STORES, "db/queries", "lib/services", "node:*", "sharp"] },
  /** Accounts are the library's business: it is given the tables and the request's cookies. */
  "lib/services/access": {
    values: [...PURE_LIB, ...STORES, "db/queries", "db/schema", "lib/services", "zod", "node:*", "better-auth"],
  },

  "db/schema": { values: ["drizzle-orm", ...PURE_LIB] },
  "db/queries": { values: ["drizzle-orm", "db/schema", "lib/order"], types: ["db/client.ts", ...PURE_LIB] },
  "db/client.ts": { values: ["drizzle-orm", "better-sqlite3", "db/schema", "node:*"], types: PURE_LIB },
  "db/trends": { values: ["lib/order", "better-sqlite3", "node:*"], types: ["lib/trends"] },
  "db/results.ts": { values: ["better-sqlite3", "node:*"] },
  "db/passing-files.ts": { values: ["node:*"] },
  "db/uploads.ts": { values: ["db/copy-hashed.ts", "node:*"], types: ["lib/importers"] },
  "db/copy-hashed.ts": { values: ["db/copy-file.mjs", "node:*"] },
  "db/copy-file.mjs": { values: ["node:*"] },
  "db/seed": { values: [...STORES, "db/schema", "db/queries", "drizzle-orm", "node:*", ...PURE_LIB], types: [] },
  "db/drizzle.config.ts": { values: ["drizzle-kit"] },

  "app/_cli": {
    values: [
      ...STORES,
      "db/seed",
      "lib/services",
      "lib/services/access",
      "lib/services/exports",
      "zod",
      "node:*",
      ...FOUNDATIONS,
    ],
    types: PURE_LIB,
  },
  "app/_server": {
    values: [
      ...NEXT_AND_REACT,
      "zod",
      "node:*",
      "lib/services",
      "lib/services/access",
      "lib/services/report-mail",
      ...FOUNDATIONS,
      "app/_server/open-stores.ts",
      "app/_server/upload-context.ts",
    ],
    types: PURE_LIB,
  },
  /** The one place of the web server that opens the databases. */
  "app/_server/open-stores.ts": { values: [...STORES, "node:*"], types: ["lib/trends"] },
  /** Files on their way in have their folder beside the stores. */
  "app/_server/upload-context.ts": { values: ["db/passing-files.ts", "app/_server", "lib/services", "node:*"] },
  [COMPONENTS]: {
    values: [
      ...NEXT_AND_REACT,
      "chart.js",
      ...FOUNDATIONS,
      ...CONSTANTS,
      ...SENTENCES,
      ...LIVE_CALCULATIONS,
      "app/_server/form-state",
    ],
    types: [...PURE_LIB, "lib/services", "lib/services/report-mail", "app/_server", "app"],
  },
  app: {
    values: [
      ...NEXT_AND_REACT,
      "zod",
      "uqr",
      "lib/services",
      "lib/services/access",
      "lib/services/photos",
      "lib/services/report-mail",
      "lib/services/exports",
      "app/_server",
      "app/_server/upload-context.ts",
      COMPONENTS,
      ...FOUNDATIONS,
      ...CONSTANTS,
      ...SENTENCES,
      ...LIVE_CALCULATIONS,
      ...TEMPLATES,
    ],
    types: PURE_LIB,
  },
};
