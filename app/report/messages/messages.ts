import type { BodyPart, SinceWhen } from "@/lib/comfort-reports/answers";
import type { ReportState } from "@/lib/comfort-reports/report-state";

/**
 * Everything that an occupant reads, in one language. For translators: `scale` has to be the seven words of the language's
 * own edition of ISO 7730 (table 1), not a translation of the English ones, and `scaleSource` says where they were read. Those of
 * Spanish, French and German are from memory; whoever has the edition at hand replaces them, and says so there.
 */
export type Messages = {
  /** BCP 47 tag, and the language's own name. */
  tag: string;
  name: string;
  title: string;
  lede: string;
  chooseLanguage: string;
  feel: string;
  /** The seven-point scale of ISO 7730 and ASHRAE 55, by vote. */
  scale: Record<"3" | "2" | "1" | "0" | "-1" | "-2" | "-3", string>;
  /** Where the words of the scale were read, or that they are from memory; not shown to occupants. */
  scaleSource: string;
  wish: string;
  preferences: Record<"warmer" | "no-change" | "cooler", string>;
  more: string;
  optional: string;
  since: string;
  sinceWhen: Record<SinceWhen, string>;
  where: string;
  bodyParts: Record<BodyPart, string>;
  around: string;
  aroundYou: Record<"draught" | "sun" | "dryAir" | "heaterInUse" | "fanInUse", string>;
  clothing: string;
  /** By id of `lib/comfort/ensembles`. */
  ensembles: Record<string, string>;
  activity: string;
  /** By id of `lib/comfort/activity`. */
  activities: Record<string, string>;
  notSaid: string;
  note: string;
  noteHint: string;
  reply: string;
  replyHint: string;
  send: string;
  sending: string;
  errors: {
    lookAgain: string;
    thermalSensation: string;
    preference: string;
    note: string;
    replyAddress: string;
    other: string;
    flood: string;
    unexpected: string;
  };
  ended: { title: string; lede: string };
  receipt: {
    thanks: string;
    heldThanks: string;
    next: string;
    steps: readonly [string, string, string];
    keep: string;
    again: string;
    yours: string;
    youSaid: string;
    soFar: string;
    nothingYet: string;
    unknownTitle: string;
    unknownLede: string;
    states: Record<ReportState | "held", string>;
  };
};

/** What the form needs of them: the rest is not sent with it. */
export type FormMessages = Omit<Messages, "receipt" | "ended" | "scaleSource">;
