import { randomInt } from "node:crypto";
import type { AppDatabase } from "@/db/client";
import { getAuth } from "./auth";

/** Letters and digits that are not mistaken for one another when copied by hand. */
const ALPHABET = "abcdefghjkmnpqrstuvwxyz23456789";
const GROUPS = 5;
const GROUP_LENGTH = 4;

/** A password of about 99 bits (20 characters of 31), in groups. */
export function generatePassword(): string {
  const group = () => Array.from({ length: GROUP_LENGTH }, () => ALPHABET[randomInt(ALPHABET.length)]).join("");
  return Array.from({ length: GROUPS }, group).join("-");
}

export async function hashPassword(db: AppDatabase, password: string): Promise<string> {
  const { password: hasher } = await getAuth(db).$context;
  return hasher.hash(password);
}
