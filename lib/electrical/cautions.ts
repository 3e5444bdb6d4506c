/** When a caution is shown: beside the fields for a reading, or with a registered heater. */
export type CautionTopic = "measuring" | "heater-in-use";

export type Caution = { id: string; topic: CautionTopic; text: string; source: string };

/** Usual cautions for people who measure, and for heaters found in use. Not legal or engineering advice. */
export const CAUTIONS: readonly Caution[] = [
  {
    id: "no-live-work",
    topic: "measuring",
    text: "Never open a panel, cut or strip a cord, or touch a bare conductor for a reading. Nobody works on live parts here.",
    source: "Common practice, no source",
  },
  {
    id: "one-conductor",
    topic: "measuring",
    text: "A clamp meter must hold one conductor: plug a line splitter between outlet and device. Round the whole cord it reads about zero; round the splitter's ×10 loop it reads ten times too high.",
    source: "Line-splitter practice as described by users, 2013-2016 (second hand)",
  },
  {
    id: "small-loads",
    topic: "measuring",
    text: "Below about 1 A, and for every fan, use a plug-in energy meter: it shows watts, and needs no clamp.",
    source: "Common practice, no source",
  },
  {
    id: "steady-reading",
    topic: "measuring",
    text: "Use a true-RMS meter, set the thermostat to its highest, and read after a minute, when the figure has settled.",
    source: "Published waveforms of five heaters (PLAID data set, 2014); waiting time from memory",
  },
  {
    id: "electrician",
    topic: "measuring",
    text: "Local codes apply. What a circuit may carry must be confirmed by a licensed electrician.",
    source: "Common practice, no source",
  },
  {
    id: "clear-of-paper",
    topic: "heater-in-use",
    text: "Keep paper, fabric and furniture 3 ft (0.9 m) from a heater, 1 m in the UK, and keep it out from under a desk with stored paper. Mats and panels listed for contact follow their label.",
    source:
      "International Fire Code 2018, 604.10.4 as published in the model code (from memory); Electrical Safety First, 2022 (UK, second hand); NFPA 1, 2018, notes to 11.5.3 (excerpt)",
  },
  {
    id: "own-outlet",
    topic: "heater-in-use",
    text: "Plug a heater straight into a wall outlet: not into an extension lead, a power strip or an outlet of the furniture.",
    source: "International Fire Code 2018, 604.10.2 and 604.10.3, as adopted in Minnesota 2020",
  },
  {
    id: "not-unattended",
    topic: "heater-in-use",
    text: "Never leave a heater on unattended, after hours, or on a timer.",
    source:
      "US Consumer Product Safety Commission heater tips, as republished 2015-2017 (second hand); NFPA 1, 2018, notes to 11.5.3 (excerpt)",
  },
  {
    id: "hot-plug",
    topic: "heater-in-use",
    text: "A plug or outlet that is hot, loose or browned goes out of use at once, until an electrician has seen it.",
    source: "US Consumer Product Safety Commission heater tips, as republished 2015-2017 (second hand)",
  },
];

export const cautionsFor = (topic: CautionTopic): Caution[] => CAUTIONS.filter((each) => each.topic === topic);
