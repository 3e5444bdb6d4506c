import type { RuleSetId } from "./circuit-kinds";

/** Where a rule stands, and how far it was followed. */
export type RuleSource = { title: string; confidence: "excerpt" | "second-hand" | "from-memory" };

/** A number of a rule with where it stands; null where the set has no such rule. */
export type Rule = { value: number; source: RuleSource };

/** The rules of one jurisdiction in one edition. Adopting places delete and amend: the local code prevails. */
export type RuleSet = {
  id: RuleSetId;
  jurisdiction: string;
  edition: string;
  /** What a continuous load counts for against the rating of its breaker. */
  continuousFactor: Rule;
  /** Share of a circuit with several outlets that one cord-and-plug item may take. */
  singleItemShare: Rule | null;
  /** Share of such a circuit that equipment fastened in place may take. */
  fastenedShare: Rule | null;
  /** Share of a receptacle's rating that a cord-and-plug load may take, on a circuit with several. */
  receptacleShare: Rule | null;
  /** What both halves of a twin socket may carry together [A]. */
  twinSocketA: Rule | null;
  /** Fuse in the plug [A]. */
  plugFuseA: Rule | null;
  /** Breakers are calibrated to this standard, which gives the bands of tripping. */
  breakerStandard: "UL 489" | "IEC 60898-1";
};

const CONTINUOUS: RuleSource = {
  title: "NFPA 70 (NEC) 210.20(A) and 210.19(A): rating at least the rest and 125 % of the continuous load",
  confidence: "excerpt",
};
const SHARES: RuleSource = {
  title: "NFPA 70 (NEC) 210.23(A)(1) and (A)(2); 210.23(B) since 2023: 80 % for one item, 50 % fastened in place",
  confidence: "excerpt",
};
const RECEPTACLE: RuleSource = {
  title: "NFPA 70 (NEC) 210.21(B)(2): 12 A on a 15 A receptacle, 16 A on a 20 A one",
  confidence: "from-memory",
};

const NEC = {
  jurisdiction: "United States",
  continuousFactor: { value: 1.25, source: CONTINUOUS },
  singleItemShare: { value: 0.8, source: SHARES },
  fastenedShare: { value: 0.5, source: SHARES },
  receptacleShare: { value: 0.8, source: RECEPTACLE },
  twinSocketA: null,
  plugFuseA: null,
  breakerStandard: "UL 489",
} as const;

export const RULE_SETS: Record<RuleSetId, RuleSet> = {
  "nec-2017": { ...NEC, id: "nec-2017", edition: "NEC 2017" },
  "nec-2023": { ...NEC, id: "nec-2023", edition: "NEC 2023" },
  "iec-uk-2018": {
    id: "iec-uk-2018",
    jurisdiction: "United Kingdom",
    edition: "BS 7671:2018",
    continuousFactor: {
      value: 1,
      source: { title: "IEC wiring rules take nothing off for continuous load", confidence: "from-memory" },
    },
    singleItemShare: null,
    fastenedShare: null,
    receptacleShare: null,
    twinSocketA: {
      value: 20,
      source: { title: "BS 1363-2: a twin socket is tested at 14 A and 6 A, 20 A in all", confidence: "second-hand" },
    },
    plugFuseA: {
      value: 13,
      source: { title: "BS 1362: carries 1.6 times for 30 minutes, opens by 1.9 times", confidence: "second-hand" },
    },
    breakerStandard: "IEC 60898-1",
  },
};

export const ruleSetLabel = ({ jurisdiction, edition }: RuleSet): string => `${edition} (${jurisdiction})`;
