import { createTransport } from "nodemailer";
import type { MailSecurity, MailText } from "@/lib/comfort-reports/mail/mail-kinds";

export type MailServer = {
  host: string;
  port: number;
  security: MailSecurity;
  user: string;
  password: string;
  fromAddress: string;
};

/** `id`: the same for each try of a mail, so that one that comes twice can be told. */
export type OutgoingMail = MailText & { to: string; id: string };

/** `isFinal`: the server will never take it (RFC 5321, 4.2.1: a reply of 5yz to the recipient). */
export type MailFate = { status: "sent" } | { status: "failed"; reason: string; isFinal: boolean };

export type SendMail = (server: MailServer, mail: OutgoingMail) => Promise<MailFate>;

/** Longest waits for the connection and the greeting, and for each answer [ms]. */
const CONNECT_MS = 5_000;
const ANSWER_MS = 10_000;
const MOST_OF_A_REASON = 200;

/**
 * Hands a mail of text alone to a mail server. With STARTTLS nothing is sent before the connection is encrypted, certificates are
 * checked, and a failure is a value: what the server said, never what it was told.
 */
export const sendMail: SendMail = async (server, { to, subject, text, id }) => {
  const { host, port, security, user, password, fromAddress } = server;
  const transport = createTransport({
    host,
    port,
    secure: security === "tls",
    requireTLS: security === "starttls",
    ignoreTLS: security === "none",
    ...(user === "" ? {} : { auth: { user, pass: password } }),
    connectionTimeout: CONNECT_MS,
    greetingTimeout: CONNECT_MS,
    socketTimeout: ANSWER_MS,
    disableFileAccess: true,
    disableUrlAccess: true,
  });
  try {
    await transport.sendMail({
      from: fromAddress,
      to,
      subject,
      text,
      messageId: `<${id}@${fromAddress.slice(fromAddress.lastIndexOf("@") + 1)}>`,
      // RFC 3834: no out-of-office reply is sent to what a program wrote.
      headers: { "Auto-Submitted": "auto-generated" },
    });
    return { status: "sent" };
  } catch (error) {
    return { status: "failed", ...faultOf(error, server) };
  } finally {
    transport.close();
  }
};

type Fault = { code?: string; responseCode?: number; response?: string; command?: string; message?: string };

function faultOf(error: unknown, { host, port, password }: MailServer): { reason: string; isFinal: boolean } {
  const { code = "", responseCode = 0, response = "", command = "", message = "" } = error as Fault;
  const at = `${host}, port ${port}`;
  const hidden = (words: string): string => (password === "" ? words : words.replaceAll(password, "..."));
  const said = hidden(response).replace(/\s+/g, " ").slice(0, MOST_OF_A_REASON);
  const isFinal = responseCode >= 500 && responseCode < 600 && command.startsWith("RCPT");
  if (code === "EAUTH")
    return { reason: `The mail server at ${at} refused the user name or password: ${said}`, isFinal };
  if (responseCode > 0) return { reason: `The mail server at ${at} answered: ${said}`, isFinal };
  if (code === "ETLS" || code === "ESTARTTLS" || /certificate|TLS|SSL/i.test(message))
    return {
      reason: `No encrypted connection to ${at} could be made: ${hidden(message).slice(0, MOST_OF_A_REASON)}`,
      isFinal,
    };
  if (code === "EDNS" || /ENOTFOUND|EAI_AGAIN/.test(message))
    return { reason: `There is no machine named ${host}, or it cannot be found from here.`, isFinal };
  if (code === "ETIMEDOUT") return { reason: `The mail server at ${at} did not answer in time.`, isFinal };
  return { reason: `The mail server at ${at} could not be reached.`, isFinal };
}
