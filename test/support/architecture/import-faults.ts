import path from "node:path";
import { COMPONENTS, IMPORT_TABLE } from "./import-table";
import { type Import, importsOf } from "./imports-of";

/** A path's area: the longest row of the table that it begins with, or null when it stands in none. */
export function areaOf(file: string): string | null {
  if (file.startsWith("app/") && file.includes("/_components/")) return COMPONENTS;
  const inside = (area: string) =>
    file === area || file.startsWith(`${area}/`) || withoutEnding(file) === withoutEnding(area);
  const areas = Object.keys(IMPORT_TABLE).filter(inside);
  return areas.sort((a, b) => b.length - a.length)[0] ?? null;
}

/** Each import of a source file that the table does not allow, as a sentence. Paths are from the project's folder. */
export function importFaults(file: string, source: string): string[] {
  const area = areaOf(file);
  if (area === null) return [`${file}: its folder has no row in the import table; add one`];
  return importsOf(file, source).flatMap((each) => {
    const reason = objection(file, area, each);
    return reason === null
      ? []
      : [`${file}:${each.line} imports ${each.typeOnly ? "types of " : ""}${each.specifier}: ${reason}`];
  });
}

function objection(file: string, area: string, { specifier, typeOnly }: Import): string | null {
  const row = IMPORT_TABLE[area] ?? { values: [] };
  const target = resolve(file, specifier);
  const allowed = (entries: readonly string[] = []) => entries.some((entry) => covers(entry, target));

  if (target.kind === "own") {
    if (target.path.endsWith(".css") && file.startsWith("app/")) return null;
    if (target.area === null) return `${target.path} has no row in the import table`;
    if (target.area === area) return null;
    if (area === COMPONENTS && isOwnRoute(file, target.path)) return null;
  }
  if (allowed(row.values)) return null;
  if (!allowed(row.types)) return `${area} may not import ${label(target)}`;
  return typeOnly ? null : `${area} may import types of ${label(target)}, but nothing that runs`;
}

type Target =
  | { kind: "own"; path: string; area: string | null }
  | { kind: "node"; name: string }
  | { kind: "package"; name: string };

function resolve(file: string, specifier: string): Target {
  if (specifier.startsWith("node:")) return { kind: "node", name: specifier };
  const own = specifier.startsWith("@/")
    ? specifier.slice(2)
    : specifier.startsWith(".")
      ? path.posix.join(path.posix.dirname(file), specifier)
      : null;
  if (own !== null) return { kind: "own", path: own, area: areaOf(own) };
  const parts = specifier.split("/");
  return { kind: "package", name: parts.slice(0, specifier.startsWith("@") ? 2 : 1).join("/") };
}

function covers(entry: string, target: Target): boolean {
  if (target.kind === "node") return entry === "node:*" || entry === target.name;
  if (target.kind === "package") return entry === target.name;
  return entry === target.area || entry === withoutEnding(target.path);
}

function label(target: Target): string {
  if (target.kind === "node") return "Node's own modules";
  return target.kind === "own" ? (target.area ?? target.path) : `the package ${target.name}`;
}

/** A component may use what stands beside its own `_components` folder, or above it, up to its route: actions and forms. */
function isOwnRoute(file: string, target: string): boolean {
  const route = file.slice(0, file.indexOf("/_components/"));
  return route !== "app" && path.posix.dirname(target) === route;
}

function withoutEnding(file: string): string {
  return file.replace(/\.(ts|tsx|mts)$/, "");
}
