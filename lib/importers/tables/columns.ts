/** A column of a table: the spellings of its name and, for a quantity, the units its heading may state. */
export type ColumnSpec = {
  key: string;
  /** Spellings in normal form; the first is the one in templates and messages. */
  names: readonly string[];
  required?: boolean;
  /** Factor to the stored unit by the unit's normal form. A blank key allows a heading without a unit. */
  units?: Readonly<Record<string, number>>;
};

export type ColumnMatch =
  | { status: "matched"; spec: ColumnSpec; factor: number }
  | { status: "unit-missing"; spec: ColumnSpec }
  | { status: "unit-unknown"; spec: ColumnSpec; unit: string }
  | { status: "none" };

/** `Floor_area (ft²)` becomes `floor area ft2`. */
export function normalHeading(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/²/g, "2")
    .replace(/³/g, "3")
    .replace(/[\s_()[\]:.^-]+/g, " ")
    .trim();
}

/** Which column a heading means. A unit in brackets that is not known is told apart from a heading that is not. */
export function matchHeading(heading: string, specs: readonly ColumnSpec[]): ColumnMatch {
  const normal = normalHeading(heading);
  let nearly: ColumnMatch = { status: "none" };
  for (const spec of specs) {
    for (const name of spec.names) {
      if (normal !== name && !normal.startsWith(`${name} `)) continue;
      const unit = normal.slice(name.length).trim();
      if (!spec.units) {
        if (unit === "") return { status: "matched", spec, factor: 1 };
        continue;
      }
      const factor = spec.units[unit];
      if (factor !== undefined) return { status: "matched", spec, factor };
      if (unit === "") nearly = { status: "unit-missing", spec };
      else if (nearly.status === "none" && /[([]/.test(heading)) nearly = { status: "unit-unknown", spec, unit };
    }
  }
  return nearly;
}

export const knownUnits = (spec: ColumnSpec): string =>
  Object.keys(spec.units ?? {})
    .filter((unit) => unit !== "")
    .join(", ");
