"use client";

import { CheckboxField } from "@/app/_components/ui/checkbox-field";
import { FieldSet } from "@/app/_components/ui/field-set";

type Props = { cautions: { mark: string; sentences: string[] }; error: string | undefined };

const MOST_SHOWN = 20;

/** What is odd about the mapping so far; it is let pass by a tick, and other cautions need another one. */
export function CautionBox({ cautions: { mark, sentences }, error }: Props) {
  if (sentences.length === 0) return null;
  const rest = sentences.length - MOST_SHOWN;
  return (
    <FieldSet legend="Look at these before you confirm" id="cautions">
      <ul>
        {sentences.slice(0, MOST_SHOWN).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
        {rest > 0 ? <li>And {rest} more of the kind.</li> : null}
      </ul>
      <CheckboxField
        key={mark}
        name="cautionsSeen"
        value={mark}
        label="This is right: import it all the same"
        error={error ? "Tick this, or change the mapping." : undefined}
      />
    </FieldSet>
  );
}
