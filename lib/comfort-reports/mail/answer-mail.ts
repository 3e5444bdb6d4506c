import type { MailText } from "./mail-kinds";

type Words = {
  subject: string;
  greeting: string;
  about: (at: string) => string;
  follow: string;
  secret: string;
  deleted: string;
};

/** What stands around an answer, by BCP 47 tag. The answer itself is as it was written. */
const WORDS: Readonly<Record<"en" | "es" | "fr" | "de", Words>> = {
  en: {
    subject: "Answer to your report about the temperature",
    greeting: "Good day,",
    about: (at) => `you reported on ${at} how the temperature was where you sit. This is the answer:`,
    follow: "Your report, and what is done about it:",
    secret: "Whoever has this address can read it.",
    deleted: "Your mail address is used for answers to this report alone and is deleted afterwards.",
  },
  es: {
    subject: "Respuesta a su aviso sobre la temperatura",
    greeting: "Buenos días:",
    about: (at) => `El ${at} nos avisó de cómo era la temperatura en su puesto. Esta es la respuesta:`,
    follow: "Su aviso y lo que se hace al respecto:",
    secret: "Quien tenga esta dirección puede leerlo.",
    deleted: "Su dirección de correo solo se usa para responder a este aviso y después se borra.",
  },
  fr: {
    subject: "Réponse à votre message sur la température",
    greeting: "Bonjour,",
    about: (at) => `vous avez signalé le ${at} comment était la température à votre place. Voici la réponse :`,
    follow: "Votre message et les suites données :",
    secret: "Toute personne qui a cette adresse peut le lire.",
    deleted: "Votre adresse ne sert qu’aux réponses à ce message ; elle est effacée ensuite.",
  },
  de: {
    subject: "Antwort auf Ihre Meldung zur Temperatur",
    greeting: "Guten Tag,",
    about: (at) => `Sie haben am ${at} gemeldet, wie die Temperatur an Ihrem Platz war. Das ist die Antwort:`,
    follow: "Ihre Meldung und was damit geschieht:",
    secret: "Wer diese Adresse hat, kann die Meldung lesen.",
    deleted: "Ihre Mailadresse dient nur für Antworten auf diese Meldung und wird danach gelöscht.",
  },
};

/** The languages that answers are mailed in; a report in any other is answered in English. */
export const ANSWER_LANGUAGES = Object.keys(WORDS);

const wordsOf = (language: string): Words => WORDS[language.split("-")[0] as keyof typeof WORDS] ?? WORDS.en;

/** An answer as its mail: `at` is the local day and time of the report, `follow` its private address, null without one. */
export function answerMail(answer: string, known: { language: string; at: string; follow: string | null }): MailText {
  const words = wordsOf(known.language);
  const parts = [
    words.greeting,
    words.about(known.at),
    answer,
    ...(known.follow === null ? [] : [`${words.follow}\n${known.follow}\n${words.secret}`]),
    words.deleted,
  ];
  return { subject: words.subject, text: parts.join("\n\n") };
}
