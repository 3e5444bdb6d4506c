import { z } from "zod";
import { inTransaction } from "@/db/client";
import { deleteMailServer, findMailServer, tryAllMailFrom, upsertMailServer } from "@/db/queries/report-mail";
import { MAIL_SECURITIES } from "@/lib/comfort-reports/mail/mail-kinds";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";

const LOOPBACK = new Set(["localhost", "127.0.0.1", "::1"]);
const SITE = "Write the address that people open this site with, beginning with https:// or http://, without a path.";

const serverInput = z.object({
  host: z
    .string()
    .trim()
    .regex(/^[A-Za-z0-9.:-]{1,253}$/, "Write the mail server's name, such as mail.example.com."),
  port: z
    .number("Write the port as a whole number.")
    .int("Write a whole number.")
    .min(1, "Write 1 or more.")
    .max(65535, "Write 65535 at most."),
  security: z.enum(MAIL_SECURITIES, "Choose how the connection is encrypted."),
  user: z.string().trim().max(254, "Keep it under 255 characters.").default(""),
  /** Empty: the password stays as it is. */
  password: z.string().max(500, "Keep it under 500 characters.").default(""),
  fromAddress: z
    .string()
    .trim()
    .max(254, "Keep it under 255 characters.")
    .pipe(z.email("Write a mail address such as name@example.com.")),
  siteAddress: z
    .string()
    .trim()
    .max(300, "Keep it under 300 characters.")
    .refine((text) => {
      if (!URL.canParse(text)) return false;
      const { protocol, pathname, search, hash, username } = new URL(text);
      return /^https?:$/.test(protocol) && pathname === "/" && search + hash + username === "";
    }, SITE),
  namesDesk: z.boolean().default(false),
  repeatsNote: z.boolean().default(false),
});
export type MailServerInput = z.input<typeof serverInput>;

/** What pages may know of a mail server: all but its password. */
export type MailServerView = {
  host: string;
  port: number;
  security: (typeof MAIL_SECURITIES)[number];
  user: string;
  hasPassword: boolean;
  fromAddress: string;
  siteAddress: string;
  namesDesk: boolean;
  repeatsNote: boolean;
  changedBy: string;
  changedAtMs: number;
};

export function readMailServer(ctx: Context, buildingId: number): MailServerView | null {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const found = findMailServer(ctx.db, buildingId);
  if (!found) return null;
  const { password, buildingId: _, ...shown } = found;
  return { ...shown, hasPassword: password !== "" };
}

/**
 * Sets the mail server of a building; an empty password keeps the one on record while user, server and port stay the same.
 * Mail that waits or was given up is tried again at once. Refuses to send a password over a connection that others can read.
 */
export function setMailServer(ctx: Context, buildingId: number, input: MailServerInput): void {
  const actor = requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const values = parseInput(serverInput, input);
  const refuse = (field: string, message: string) => new ServiceError("invalid", message, { [field]: message });
  if (values.user !== "" && values.security === "none" && !LOOPBACK.has(values.host))
    throw refuse(
      "security",
      "A user name and password are sent over an encrypted connection only: choose TLS or STARTTLS.",
    );
  inTransaction(ctx.db, (tx) => {
    const before = findMailServer(tx, buildingId);
    const isSame = before?.user === values.user && before.host === values.host && before.port === values.port;
    const password = values.user === "" ? "" : values.password || (isSame ? before.password : "");
    if (values.user !== "" && password === "")
      throw refuse("password", "Write the password that belongs to this user name on this server.");
    upsertMailServer(tx, {
      ...values,
      password,
      siteAddress: new URL(values.siteAddress).origin,
      buildingId,
      changedBy: actorName(actor),
      changedAtMs: ctx.now,
    });
    tryAllMailFrom(tx, buildingId, ctx.now);
  });
}

/** Takes the server, and its password with it, off the record: no mail is sent, recipients stay. */
export function endMailServer(ctx: Context, buildingId: number): void {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  deleteMailServer(ctx.db, buildingId);
}
