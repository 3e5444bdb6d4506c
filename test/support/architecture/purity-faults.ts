import { parseSync } from "vite";
import { areaOf } from "./import-faults";
import { PURE_AREAS } from "./import-table";
import { lineAt, type Node, name, visit } from "./imports-of";

const FORBIDDEN_MEMBERS = new Set([
  "Date.now",
  "Math.random",
  "performance.now",
  "crypto.randomUUID",
  "crypto.getRandomValues",
]);
const FORBIDDEN_GLOBALS = new Set(["process", "fetch", "setTimeout", "setInterval", "localStorage"]);

/** Uses of the clock, of chance, of the environment or of the network in a folder that must be pure. */
export function purityFaults(file: string, source: string): string[] {
  if (!PURE_AREAS.includes(areaOf(file) ?? "")) return [];
  const faults: string[] = [];
  visit(parseSync(file, source).program, (node) => {
    const use = impureUse(node);
    if (use !== null) faults.push(`${file}:${lineAt(source, node.start)} uses ${use}: give it as an argument`);
  });
  return faults;
}

function impureUse(node: Node): string | null {
  if (node.type === "NewExpression" && name(node.callee) === "Date") {
    return (node.arguments as unknown[]).length === 0 ? "new Date()" : null;
  }
  if (node.type === "CallExpression") {
    const callee = name(node.callee);
    if (callee === "Date") return "Date()";
    return callee !== null && FORBIDDEN_GLOBALS.has(callee) ? `${callee}()` : null;
  }
  if (node.type !== "MemberExpression") return null;
  const [object, property] = [name(node.object), name(node.property)];
  if (object === null || property === null) return null;
  if (FORBIDDEN_GLOBALS.has(object)) return `${object}.${property}`;
  return FORBIDDEN_MEMBERS.has(`${object}.${property}`) ? `${object}.${property}` : null;
}
