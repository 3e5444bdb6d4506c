import { parseSync } from "vite";

export type Import = { specifier: string; typeOnly: boolean; line: number };

/** A node of the syntax tree, as far as it is looked at here. */
export type Node = { type: string; start: number; [field: string]: unknown };

/**
 * Every import of a module: static, dynamic, re-exports, `import("...")` in a type, and `require`. An import whose
 * names are all types counts as one of types.
 */
export function importsOf(path: string, source: string): Import[] {
  const parsed = parseSync(path, source);
  const [failure] = parsed.errors;
  if (failure !== undefined) throw new Error(`${path} cannot be parsed: ${failure.message}`);
  const found: Import[] = [];
  const add = (specifier: unknown, typeOnly: boolean, at: number) =>
    found.push({ specifier: String(specifier), typeOnly, line: lineAt(source, at) });

  visit(parsed.program, (node) => {
    const from = literal(node.source);
    if (node.type === "ImportDeclaration") {
      add(from, node.importKind === "type" || allTypes(node.specifiers, "importKind"), node.start);
    } else if (node.type === "ExportNamedDeclaration" || node.type === "ExportAllDeclaration") {
      if (from !== null) add(from, node.exportKind === "type" || allTypes(node.specifiers, "exportKind"), node.start);
    } else if (node.type === "ImportExpression") {
      add(from ?? "(computed)", false, node.start);
    } else if (node.type === "TSImportType") {
      add(from ?? literal(node.argument) ?? "(computed)", true, node.start);
    } else if (node.type === "TSExternalModuleReference") {
      add(literal(node.expression), false, node.start);
    } else if (node.type === "CallExpression" && name(node.callee) === "require") {
      add(literal((node.arguments as unknown[])[0]) ?? "(computed)", false, node.start);
    }
  });
  return found;
}

/** Walks a syntax tree, parents first. */
export function visit(node: unknown, look: (node: Node) => void): void {
  if (Array.isArray(node)) {
    for (const each of node) visit(each, look);
    return;
  }
  if (typeof node !== "object" || node === null) return;
  if ("type" in node && typeof node.type === "string") look(node as Node);
  for (const child of Object.values(node)) visit(child, look);
}

/** Name of an identifier, or null. */
export function name(node: unknown): string | null {
  return isNode(node) && node.type === "Identifier" ? String(node.name) : null;
}

export function lineAt(source: string, offset: number): number {
  return source.slice(0, offset).split("\n").length;
}

function literal(node: unknown): string | null {
  if (!isNode(node)) return null;
  if (node.type === "TSLiteralType") return literal(node.literal);
  return node.type === "Literal" ? String(node.value) : null;
}

function allTypes(specifiers: unknown, kind: string): boolean {
  return Array.isArray(specifiers) && specifiers.length > 0 && specifiers.every((each: Node) => each[kind] === "type");
}

function isNode(node: unknown): node is Node {
  return typeof node === "object" && node !== null && "type" in node;
}
