import styles from "./report.module.css";

type Props = {
  legend: string;
  languages: readonly { tag: string; name: string }[];
  present: string;
  /** Address of the page, to which the language is added. */
  path: string;
};

/** The page in another language: plain links, so that it works without script. */
export function LanguageChoice({ legend, languages, present, path }: Props) {
  return (
    <nav aria-label={legend} className={styles.languages}>
      <ul>
        {languages.map(({ tag, name }) => (
          <li key={tag} lang={tag}>
            {tag === present ? (
              <strong aria-current="true">{name}</strong>
            ) : (
              <a href={`${path}?language=${tag}`}>{name}</a>
            )}
          </li>
        ))}
      </ul>
    </nav>
  );
}
