"use client";

import { Field } from "@/app/_components/ui/field";
import { FieldSet } from "@/app/_components/ui/field-set";
import type { MappingSource } from "@/lib/services/trend-imports/mapping";

const MOST_SHOWN = 12;

/** Under which name the mapping of each source is kept for its next files. */
export function ProfileNames({ sources }: { sources: readonly MappingSource[] }) {
  return (
    <FieldSet
      legend="Keep the mapping for the next file"
      hint="The next file of the same shape is then imported without a question. A name in use gets a new version; a blank one keeps nothing."
    >
      {sources.slice(0, MOST_SHOWN).map(({ key, name, fileNames, points, onePoint }, i) => (
        <div key={key}>
          <input type="hidden" name={`source.${i}`} value={key} />
          <Field
            key={name}
            name={`profile.${i}`}
            label="Profile"
            optional
            defaultValue={name}
            maxLength={120}
            hint={sourceWords(fileNames, points, onePoint)}
          />
        </div>
      ))}
    </FieldSet>
  );
}

function sourceWords(fileNames: readonly string[], points: number, onePoint: boolean): string {
  const files = fileNames.length === 1 ? fileNames[0] : `${fileNames[0]} and ${fileNames.length - 1} more`;
  const shape = onePoint ? "one point a file" : points === 1 ? "one point" : `${points} points`;
  return `${files}: ${shape}`;
}
