/** One number of a published guidance, in the unit that it was published in. */
export type GuidanceFigure = { key: string; what: string; value: number; unit: "°C" | "°F" | "%" | "m/s" };

/** What an authority or a standard says of the temperature of offices. Guidance for people, never a limit of this tool. */
export type TemperatureGuidance = {
  id: string;
  place: string;
  force: string;
  /** True for a rule that has to be kept, false for a recommendation; null where its force depends on who adopts it. */
  binding: boolean | null;
  expired?: boolean;
  inForceFrom?: string;
  figures: readonly GuidanceFigure[];
  /** Figures that people expect and that are not there. */
  absent?: readonly { key: string; words: string }[];
  source: string;
};

const c = (key: string, what: string, value: number): GuidanceFigure => ({ key, what, value, unit: "°C" });
const pct = (key: string, what: string, value: number): GuidanceFigure => ({ key, what, value, unit: "%" });

type Standing = Pick<TemperatureGuidance, "force" | "binding" | "expired" | "inForceFrom" | "absent">;

const guidance = (
  id: string,
  place: string,
  standing: Standing,
  figures: readonly GuidanceFigure[],
  source: string,
): TemperatureGuidance => ({ id, place, ...standing, figures, source });

const STANDARD = { force: "standard, operative temperature", binding: null } as const;

/** Operative temperature of ISO 7730 offices: 24.5 °C in summer and 22.0 °C in winter with the half-widths of a category. */
const iso = (category: string, summerK: number, winterK: number, air: readonly [number, number], ppdPct: number) =>
  guidance(
    `iso-7730-${category.toLowerCase()}`,
    `ISO 7730, category ${category}`,
    STANDARD,
    [
      c("summerLowC", "summer from", 24.5 - summerK),
      c("summerHighC", "to", 24.5 + summerK),
      c("winterLowC", "winter from", 22 - winterK),
      c("winterHighC", "to", 22 + winterK),
      { key: "summerMaxAirSpeedMps", what: "air at most", value: air[0], unit: "m/s" },
      { key: "winterMaxAirSpeedMps", what: "in winter", value: air[1], unit: "m/s" },
      pct("ppdMaxPct", "PPD under", ppdPct),
    ],
    "ISO 7730:2005, table A.5, offices (excerpt of a reproduction)",
  );

const en = (category: string, low: number, high: number, winterLow: number) =>
  guidance(
    `en-16798-${category.toLowerCase()}`,
    `EN 15251 / EN 16798-1, category ${category}`,
    STANDARD,
    [c("summerLowC", "summer from", low), c("summerHighC", "to", high), c("winterLowC", "winter from", winterLow)],
    "EN 15251:2007 / EN 16798-1:2019 (excerpt of a paper's table; winter upper limits differ by edition)",
  );

export const TEMPERATURE_GUIDANCE: readonly TemperatureGuidance[] = [
  guidance(
    "us-osha",
    "United States, OSHA",
    { force: "recommendation", binding: false },
    [
      { key: "lowF", what: "from", value: 68, unit: "°F" },
      { key: "highF", what: "to", value: 76, unit: "°F" },
      pct("rhLowPct", "humidity from", 20),
      pct("rhHighPct", "to", 60),
    ],
    "OSHA memorandum of 24 February 2003 (excerpt)",
  ),
  guidance(
    "us-federal",
    "United States, federal buildings",
    { force: "rule", binding: true, absent: [{ key: "occupiedRangeC", words: "no figure for occupied hours" }] },
    [{ key: "unoccupiedHeatingMaxF", what: "heating outside working hours to at most", value: 55, unit: "°F" }],
    "41 CFR 102-74.185 (from memory) and its predecessor 101-20.107(c)(1) (excerpt)",
  ),
  guidance(
    "uk",
    "United Kingdom",
    { force: "approved code of practice", binding: false, absent: [{ key: "maximumC", words: "no maximum" }] },
    [c("minimumC", "normally at least", 16), c("minimumPhysicalWorkC", "for physical work", 13)],
    "Workplace Regulations 1992, reg. 7, and L24 (excerpt)",
  ),
  iso("A", 1, 1, [0.12, 0.1], 6),
  iso("B", 1.5, 2, [0.19, 0.16], 10),
  iso("C", 2.5, 3, [0.24, 0.21], 15),
  en("I", 23.5, 25.5, 21),
  en("II", 23, 26, 20),
  en("III", 22, 27, 18),
  guidance(
    "japan",
    "Japan, office ordinance",
    { force: "duty to endeavour", binding: false, inForceFrom: "2022-04-01" },
    [c("lowC", "from", 18), c("highC", "to", 28), pct("rhLowPct", "humidity from", 40), pct("rhHighPct", "to", 70)],
    "Office ordinance, art. 5(3), as amended by Ordinance 29 of 2022 (read in full)",
  ),
  guidance(
    "japan-cool-biz",
    "Japan, summer campaign",
    { force: "voluntary", binding: false },
    [c("summerC", "summer", 28)],
    "Report of 2024 (excerpt)",
  ),
  guidance(
    "germany",
    "Germany, ASR A3.5",
    { force: "technical rule", binding: null },
    [
      c("minimumC", "at least", 20),
      c("shouldNotExceedC", "should not exceed", 26),
      c("measuresRequiredAboveC", "act above", 30),
      c("unsuitableAboveC", "unsuitable above", 35),
    ],
    "ASR A3.5 / DGUV 215-520 (excerpt)",
  ),
  guidance(
    "france",
    "France",
    { force: "code", binding: true },
    [
      c("heatingMaxC", "heating to at most", 19),
      c("coolingOnlyAboveC", "cooling only above", 26),
      c("unoccupied24hMaxC", "empty for a day, at most", 16),
      c("unoccupied48hMaxC", "for two days, at most", 8),
    ],
    "Code de l'énergie R241-26, R241-27 (excerpt), R241-30 (from memory)",
  ),
  guidance(
    "spain-2022",
    "Spain, 2022 to 2023",
    { force: "decree, expired", binding: true, expired: true },
    [
      c("heatingMaxC", "heating to at most", 19),
      c("coolingMinC", "cooling to at least", 27),
      pct("rhLowPct", "humidity from", 30),
      pct("rhHighPct", "to", 70),
    ],
    "RDL 14/2022, art. 29, until 1 November 2023 (excerpt)",
  ),
  guidance(
    "italy-2022",
    "Italy, 2022 to 2023",
    { force: "decree, expired", binding: true, expired: true },
    [c("heatingMaxC", "heating to at most", 19 + 2), c("coolingMinC", "cooling to at least", 27 - 2)],
    "Decree of 2022, with its tolerance of 2 K (excerpt)",
  ),
  guidance(
    "who",
    "World Health Organization, housing",
    { force: "guideline", binding: false },
    [c("minimumC", "at least", 18)],
    "Housing guidelines, 2018 (second hand)",
  ),
];
