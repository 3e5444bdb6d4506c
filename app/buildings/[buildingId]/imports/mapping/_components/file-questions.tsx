"use client";

import { FieldSet } from "@/app/_components/ui/field-set";
import type { FileQuestion } from "../questions";
import styles from "./mapping-form.module.css";

type Props = { questions: readonly FileQuestion[]; errors: Readonly<Record<string, string>> | undefined };

/** Questions about whole files: each choice with what it would mean. */
export function FileQuestions({ questions, errors }: Props) {
  return questions.map(({ field, question, fileNames, runIds, several, choices, given, byProfile }) => {
    const name = `answer.${field}`;
    return (
      <FieldSet
        key={`${field}=${given.join()}`}
        id={name}
        legend={filesWords(fileNames)}
        hint={`${question}${byProfile ? " The profile answers this." : ""}`}
        error={errors?.[name] && (choices.length === 0 ? "Give a date and a time of day." : "Choose an answer.")}
      >
        <input type="hidden" name={`runs.${field}`} value={runIds.join(",")} />
        {choices.length === 0 ? (
          <label className={styles.answer}>
            <input type="datetime-local" step={1} name={name} defaultValue={given[0] ?? ""} />
            <span>date and time of day, on the building's clock</span>
          </label>
        ) : null}
        {choices.map(({ value, label, meaning }) => (
          <label key={value} className={styles.answer}>
            <input
              type={several ? "checkbox" : "radio"}
              name={name}
              value={value}
              defaultChecked={given.includes(value)}
            />
            <span>
              {label}
              {meaning ? <span className={styles.soft}>: {meaning}</span> : null}
            </span>
          </label>
        ))}
      </FieldSet>
    );
  });
}

const filesWords = (names: readonly string[]): string =>
  names.length === 1 ? `Question about ${names[0]}` : `Question about ${names[0]} and ${names.length - 1} more files`;
