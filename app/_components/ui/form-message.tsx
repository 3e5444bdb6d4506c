import styles from "./form-message.module.css";

type Props = {
  /** What is wrong with the whole form, or that it could not be saved. */
  message?: string;
  /** Messages by field name, one or several; each leads to the field of that id. */
  fieldErrors?: Readonly<Record<string, string | readonly string[] | undefined>>;
};

/** Summary of a refused form: says what is wrong and leads to each field. Nothing when all is well. */
export function FormMessage({ message, fieldErrors = {} }: Props) {
  const entries = Object.entries(fieldErrors).flatMap(([name, value]) => {
    const texts = typeof value === "string" ? [value] : (value ?? []);
    return texts.filter(Boolean).map((text, i) => ({ key: `${name} ${i}`, name, text }));
  });
  if (!message && entries.length === 0) return null;
  return (
    <div className={styles.message} role="alert">
      <p className={styles.title}>
        {message ??
          (entries.length === 1 ? "One entry needs another look." : `${entries.length} entries need another look.`)}
      </p>
      {entries.length > 0 ? (
        <ul className={styles.list}>
          {entries.map(({ key, name, text }) => (
            <li key={key}>
              <a href={`#${name}`}>{text}</a>
            </li>
          ))}
        </ul>
      ) : null}
    </div>
  );
}
