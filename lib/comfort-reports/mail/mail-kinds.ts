/**
 * How a connection to a mail server is encrypted: TLS from its first byte (RFC 8314), TLS that the server is asked for and
 * without which nothing is sent (STARTTLS, RFC 3207), or not at all.
 */
export const MAIL_SECURITIES = ["tls", "starttls", "none"] as const;
export type MailSecurity = (typeof MAIL_SECURITIES)[number];

/** What became of an answer's mail: not yet sent, sent, given up, or its address was deleted before. */
export const ANSWER_MAIL_STATES = ["waiting", "sent", "failed", "no-address"] as const;
export type AnswerMailState = (typeof ANSWER_MAIL_STATES)[number];

/** A mail of text alone. Subject and text are plain characters, lines parted by line feeds. */
export type MailText = { subject: string; text: string };
