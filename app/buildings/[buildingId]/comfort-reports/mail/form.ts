import { checkedOf, choiceOf, numberOf, type PostedValues, requiredNumberOf, textOf } from "@/app/_server/form-fields";
import type { MailRecipientInput } from "@/lib/services/report-mail/recipients";
import type { MailServerInput } from "@/lib/services/report-mail/server";

/** All but the password, which no form gives back. */
export const mailServerFrom = (values: PostedValues): MailServerInput => ({
  host: textOf(values, "host"),
  port: requiredNumberOf(values, "port"),
  security: choiceOf<MailServerInput["security"]>(values, "security"),
  user: textOf(values, "user"),
  fromAddress: textOf(values, "fromAddress"),
  siteAddress: textOf(values, "siteAddress"),
  namesDesk: checkedOf(values, "namesDesk"),
  repeatsNote: checkedOf(values, "repeatsNote"),
});

export const recipientFrom = (values: PostedValues): MailRecipientInput => ({
  address: textOf(values, "address"),
  zoneCodes: textOf(values, "zoneCodes"),
  dailyHour: numberOf(values, "dailyHour"),
});
