import type { ChecklistItem } from "./checklists";

const IFC = "International Fire Code 2018";
const US_ONLY = { "uk-2013": null } as const;

/** What is looked at, the worst first. "Excerpt", "second hand" and "from memory" say how far a source was followed. */
export const CHECKLIST_ITEMS: readonly ChecklistItem[] = [
  {
    id: "not-listed",
    fault: "No mark of a recognised testing laboratory, or its plate cannot be read",
    scope: "any",
    severity: "take-out-of-use",
    basis: `${IFC}, 604.10.1 (as adopted in Minnesota 2020); NFPA 1:2018, 11.5.3 (excerpt); 29 CFR 1910.303(b)(2) (excerpt). UL 1278, UL 1042; mats UL 499, fans UL 507 (from memory)`,
    elsewhere: {
      "uk-2013": {
        fault: "No conformity mark, or its plate cannot be read",
        basis: "IEC 60335-2-30 heaters, -2-80 fans (excerpt), -2-81 foot warmers and mats (from memory)",
      },
    },
  },
  {
    id: "damaged",
    fault: "Cord, plug, guard or case damaged, changed, or mended with tape",
    scope: "any",
    severity: "take-out-of-use",
    basis: `${IFC}, 604.1; 29 CFR 1910.334(a) (excerpt of a summary)`,
    elsewhere: { "uk-2013": { basis: "HSE INDG236 rev3 and HSG107 3rd ed., 2013 (excerpt)" } },
  },
  {
    id: "hot-outlet",
    fault:
      "Plug, outlet or cover plate hot, loose or browned in use; the outlet too goes out of use until an electrician has seen it",
    scope: "any",
    severity: "take-out-of-use",
    basis:
      "US Consumer Product Safety Commission, heater tips as republished 2015-2017 (second hand), letter of 2022 on crimped plug blades (excerpt)",
  },
  {
    id: "ground-pin",
    fault:
      "Ground pin taken off, or a two-prong adapter in between (a double-insulated device with two pins is in order)",
    scope: "any",
    severity: "take-out-of-use",
    basis: "29 CFR 1910.334(a)(3) (from memory); a national laboratory's rule of 2019 asks for three prongs (excerpt)",
    elsewhere: { "uk-2013": null },
  },
  {
    id: "recall",
    fault: "Make, model and date code are under a recall",
    scope: "any",
    severity: "take-out-of-use",
    basis: "8 recalls of portable heaters, about 925,000 units, 2010-2022, as a US Senate letter of 2022 counts them",
    elsewhere: { "uk-2013": { basis: "The market surveillance authority's recall notices (from memory)" } },
  },
  {
    id: "circuit-over-rating",
    fault: "Its circuit is above the breaker's rating",
    scope: "heater",
    severity: "take-out-of-use",
    basis:
      "The circuit's own page; New York City Fire Code 605.10.3 bars use beyond the rating of circuit or receptacle (excerpt)",
    elsewhere: { "uk-2013": { basis: "The circuit's own page; BS 7671 433.1 (excerpt)" } },
  },
  {
    id: "circuit-over-limit",
    fault: "Its circuit is above the code's planning limit, for continuous load or for one item",
    scope: "heater",
    severity: "correct-before-use",
    basis: "The circuit's own page; NFPA 70 (NEC) 210.20(A) and 210.23(A) (excerpt)",
    elsewhere: { ...US_ONLY },
  },
  {
    id: "bad-place",
    fault: "Stands in a wet or hazardous place, an electrical room or a store",
    scope: "any",
    severity: "take-out-of-use",
    basis: `New York City Fire Code 605.10.3 (excerpt); ${IFC}, 604.3, working space; wet places: its plate (from memory)`,
    elsewhere: { "uk-2013": { basis: "Its plate and instructions (from memory)" } },
  },
  {
    id: "hospital",
    fault: "In a hospital or clinic: element above 100 °C (212 °F), or outside staff areas where nobody sleeps",
    scope: "heater",
    severity: "take-out-of-use",
    basis: `${IFC}, 604.10.5`,
    elsewhere: { ...US_ONLY },
  },
  {
    id: "fuel-fired",
    fault: "Burns fuel: outside of this register, ask the fire marshal",
    scope: "heater",
    severity: "take-out-of-use",
    basis: "Common practice, no source",
  },
  {
    id: "extension-lead",
    fault: "Plugged into an extension cord or reel",
    scope: "heater",
    severity: "correct-before-use",
    basis: `${IFC}, 604.10.3. NFPA 1:2018 tolerates a cord of adequate rating in its notes (excerpt): the local code decides`,
    elsewhere: { "uk-2013": { basis: "Electrical Safety First, plug-in heaters, 2022 (second hand)" } },
  },
  {
    id: "power-strip",
    fault: "Plugged into a power strip, a multi-adapter, a UPS or an outlet of the furniture",
    scope: "heater",
    severity: "correct-before-use",
    basis: `${IFC}, 604.10.2 and 604.4; UL 1363 strips are for desk equipment of little current (excerpt); furniture: US Air Force AFI 91-203, 6.2.10 (second hand)`,
    elsewhere: { "uk-2013": { basis: "Electrical Safety First, plug-in heaters, 2022 (second hand)" } },
  },
  {
    id: "clearance",
    fault: "Less than 3 ft (0.9 m) to paper, fabric or furniture; a panel listed for it follows its own plate",
    scope: "free-standing-heater",
    severity: "correct-before-use",
    basis: `${IFC}, 604.10.4 as published in the model code (from memory; not adopted in Minnesota) and 305.1; New York City Fire Code 605.10.3 (excerpt)`,
    elsewhere: {
      "uk-2013": {
        fault: "Less than 1 m to paper, fabric or furniture",
        basis: "Electrical Safety First, plug-in heaters, 2022 (second hand)",
      },
    },
  },
  {
    id: "tip-over",
    fault: "Can be knocked over, and does not switch itself off then",
    scope: "free-standing-heater",
    severity: "correct-before-use",
    basis: "NFPA 1:2018, 11.5.3 (excerpt); GSA field office notice, undated (excerpt)",
    elsewhere: { "uk-2013": { basis: "Common practice, no source" } },
  },
  {
    id: "no-cut-off",
    fault: "No cut-off against overheating, or one that resets itself (made before about 2016)",
    scope: "heater",
    severity: "correct-before-use",
    basis:
      "UL 1278, 4th ed., ended cut-offs that reset themselves, effective 21 March 2016 (excerpt); GSA field office notice (excerpt)",
    elsewhere: { "uk-2013": { fault: "No cut-off against overheating", basis: "IEC 60335-2-30 (from memory)" } },
  },
  {
    id: "unattended",
    fault: "Left on unattended or after hours, or on a timer or a remote plug",
    scope: "heater",
    severity: "correct-before-use",
    basis:
      "US Consumer Product Safety Commission, heater tips (second hand); NFPA 1:2018, notes (excerpt); remote plugs: product instructions (from memory)",
    elsewhere: { "uk-2013": { basis: "Electrical Safety First, plug-in heaters, 2022 (second hand)" } },
  },
  {
    id: "boxed-in",
    fault: "Under a desk, forgotten there or boxed in with stored paper",
    scope: "free-standing-heater",
    severity: "correct-before-use",
    basis: "NFPA 1:2018, notes to 11.5.3: hard to tip, easy to forget (excerpt)",
    elsewhere: { "uk-2013": { basis: "Common practice, no source" } },
  },
  {
    id: "cord-route",
    fault: "Cord under a carpet, through a door or pinched; to trip over, or in the way of an exit",
    scope: "any",
    severity: "correct-before-use",
    basis: `${IFC}, 604.5; 29 CFR 1910.305(g)(1)(iv) (excerpt)`,
    elsewhere: { "uk-2013": { basis: "HSE INDG236 rev3, 2013 (excerpt)" } },
  },
  {
    id: "fan-guard",
    fault: "Fan guard open or missing, blade cracked or rubbing",
    scope: "fan",
    severity: "correct-before-use",
    basis: "UL 507 (from memory)",
    elsewhere: { "uk-2013": { basis: "IEC 60335-2-80 (excerpt)" } },
  },
  {
    id: "test-overdue",
    fault:
      "Visual check or test overdue: a fan or double-insulated device is looked at every 2 to 4 years; a Class I device every 6 to 12 months, and tested every 1 to 2 years",
    scope: "any",
    severity: "schedule",
    basis:
      "HSE INDG236 and HSG107, 2013: no interval is fixed by law, and what staff bring counts (table read in a textbook's summary)",
    elsewhere: { "us-ifc-2018": null, "us-federal": null },
  },
  {
    id: "not-authorised",
    fault: "Not authorised for this space",
    scope: "any",
    severity: "house-policy",
    basis: "Lease, insurer or house rule",
    elsewhere: {
      "us-federal": {
        severity: "take-out-of-use",
        basis: "41 CFR 102-74.190: portable heaters and fans need the buildings manager's authorisation",
      },
    },
  },
  {
    id: "glowing-or-large",
    fault: "Exposed glowing element, or more watts than the house allows",
    scope: "heater",
    severity: "house-policy",
    basis: "GSA field office notice (excerpt); a cap of 900 W: Utah state offices, 2005 (excerpt)",
  },
];
