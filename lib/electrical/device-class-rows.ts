import type { ClassSource, DeviceClass } from "./device-classes";
import type { ValueRange } from "./value-range";

const PLUG_RATING: ClassSource = {
  title: "Portable heater product standard as quoted in an electricians' forum: up to 1500 W on a 15 A plug",
  url: "http://forums.mikeholt.com/goto/post?id=1634498",
  confidence: "second-hand",
};
const PLAID: ClassSource = {
  title: "Gao et al., PLAID data set, plots of 5 heaters and 5 fans at 120 V, read by eye to about 10 %",
  year: "2014",
  url: "https://github.com/jingkungao/PLAID",
  confidence: "published",
};
const TANG: ClassSource = {
  title: "Tang et al., Building and Environment 217, 109069, measured power of six personal devices (abstract)",
  year: "2022",
  url: "https://scribd.com/document/732950766/1-s2-0-S0360132322003080-main",
  confidence: "published",
};
const FOOT_WARMER_STUDY: ClassSource = {
  title: "UC Berkeley Center for the Built Environment, foot warmer of at most 160 W, as reported",
  year: "2013",
  url: "https://www.environmentenergyleader.com/2013/08/what-if-every-work-station-had-a-fan-heater/",
  confidence: "second-hand",
};
const MAGAZINE: ClassSource = {
  title: "Consumer magazine test of personal heaters: most 1500 W, small ones 200-900 W",
  year: "2015",
  url: "https://www.consumerreports.org/cro/spaceheaters/Personal-Space-Heater-Reviews",
  confidence: "published",
};
const UTILITY: ClassSource = {
  title: "BC Hydro, workplace thermal comfort: 700-1700 W",
  year: "2015",
  url: "https://www.bchydro.com/news/conservation/2015/workplace-thermal-comfort.html",
  confidence: "published",
};
const VENDORS: ClassSource = {
  title: "Nameplate powers of panels, mats and foot warmers on sale, as sellers state them",
  year: "2015-2025",
  url: "https://cozyproducts.com/blogs/blog/71831875-ending-office-temperature-wars",
  confidence: "second-hand",
};
const FAN_POWERS: ClassSource = {
  title: "Typical fan powers: table and pedestal 10-60 W, tower 40-100 W, box 50-100 W (low authority)",
  url: "https://askvity.info/energy-consumption/how-much-fan-watt",
  confidence: "second-hand",
};
const OFFICE_RULE: ClassSource = {
  title: "Utah state office rule: cap of 900 W",
  year: "2005",
  url: "http://utahcommerce.blogspot.com/2009/11/dfcm-space-heater-policy.html",
  confidence: "published",
};
const PRACTICE: ClassSource = { title: "Common practice, no source", confidence: "judgement" };
const MEMORY: ClassSource = { title: "Usual range of the kind, no document read", confidence: "from-memory" };

const ELEMENT: ValueRange = { value: 1, low: 0.98, high: 1 };

/** Typical power per class in W with its range. Values of 1500 W classes are nameplates and overstate energy by up to about 15 %. */
export const DEVICE_CLASS_ROWS: readonly DeviceClass[] = [
  {
    id: "fan-heater-1500",
    label: "fan-forced heater (ceramic or wire), 1500 W",
    kind: "space-heater",
    isContact: false,
    nominalVoltageV: 120,
    powerFactor: ELEMENT,
    settings: [
      { name: "off", powerW: 0.5, lowW: 0, highW: 2 },
      { name: "fan-only", powerW: 20, lowW: 10, highW: 40 },
      { name: "low-heat", powerW: 750, lowW: 600, highW: 900 },
      { name: "high-heat", powerW: 1500, lowW: 1150, highW: 1575 },
    ],
    sources: [PLUG_RATING, PLAID, MAGAZINE, UTILITY, MEMORY],
  },
  {
    id: "fan-heater-900",
    label: "compact fan heater, about 900 W",
    kind: "space-heater",
    isContact: false,
    nominalVoltageV: 120,
    powerFactor: ELEMENT,
    settings: [
      { name: "off", powerW: 0.5, lowW: 0, highW: 2 },
      { name: "low-heat", powerW: 500, lowW: 400, highW: 650 },
      { name: "high-heat", powerW: 900, lowW: 750, highW: 950 },
    ],
    sources: [MAGAZINE, OFFICE_RULE, MEMORY],
  },
  {
    id: "fan-heater-personal",
    label: "personal fan heater, 170-400 W",
    kind: "space-heater",
    isContact: false,
    nominalVoltageV: 120,
    powerFactor: ELEMENT,
    settings: [
      { name: "off", powerW: 0, lowW: 0, highW: 1 },
      { name: "high-heat", powerW: 250, lowW: 170, highW: 420 },
    ],
    sources: [TANG, MAGAZINE],
  },
  {
    id: "oil-radiator-1500",
    label: "oil-filled radiator, three heat steps",
    kind: "space-heater",
    isContact: false,
    nominalVoltageV: 120,
    powerFactor: ELEMENT,
    settings: [
      { name: "off", powerW: 0, lowW: 0, highW: 2 },
      { name: "low-heat", powerW: 600, lowW: 500, highW: 700 },
      { name: "medium-heat", powerW: 900, lowW: 800, highW: 1000 },
      { name: "high-heat", powerW: 1500, lowW: 1350, highW: 1575 },
    ],
    sources: [PRACTICE, MEMORY],
  },
  {
    id: "radiant-1500",
    label: "glowing radiant heater (quartz, halogen, carbon)",
    kind: "space-heater",
    isContact: false,
    nominalVoltageV: 120,
    powerFactor: ELEMENT,
    settings: [
      { name: "off", powerW: 0, lowW: 0, highW: 1 },
      { name: "low-heat", powerW: 750, lowW: 400, highW: 800 },
      { name: "high-heat", powerW: 1500, lowW: 800, highW: 1575 },
    ],
    sources: [TANG, MEMORY],
  },
  {
    id: "radiant-panel",
    label: "flat under-desk radiant panel",
    kind: "space-heater",
    isContact: false,
    nominalVoltageV: 120,
    powerFactor: ELEMENT,
    settings: [
      { name: "off", powerW: 0, lowW: 0, highW: 1 },
      { name: "high-heat", powerW: 150, lowW: 100, highW: 200 },
    ],
    sources: [VENDORS, PRACTICE],
  },
  {
    id: "foot-warmer-lamp",
    label: "enclosed foot warmer (lamp or small element)",
    kind: "space-heater",
    isContact: false,
    nominalVoltageV: 120,
    powerFactor: ELEMENT,
    settings: [
      { name: "off", powerW: 0, lowW: 0, highW: 1 },
      { name: "high-heat", powerW: 160, lowW: 60, highW: 180 },
    ],
    sources: [FOOT_WARMER_STUDY, VENDORS],
  },
  {
    id: "heated-mat",
    label: "heated foot mat",
    kind: "space-heater",
    isContact: true,
    nominalVoltageV: 120,
    powerFactor: ELEMENT,
    settings: [
      { name: "off", powerW: 0, lowW: 0, highW: 1 },
      { name: "low-heat", powerW: 40, lowW: 20, highW: 60 },
      { name: "high-heat", powerW: 80, lowW: 40, highW: 105 },
    ],
    sources: [VENDORS, PRACTICE],
  },
  {
    id: "heated-cushion",
    label: "heated seat pad or cushion",
    kind: "space-heater",
    isContact: true,
    nominalVoltageV: 120,
    powerFactor: ELEMENT,
    settings: [
      { name: "off", powerW: 0, lowW: 0, highW: 1 },
      { name: "high-heat", powerW: 43, lowW: 15, highW: 60 },
    ],
    sources: [TANG, MEMORY],
  },
  {
    id: "heated-throw",
    label: "heated throw or blanket",
    kind: "space-heater",
    isContact: true,
    nominalVoltageV: 120,
    powerFactor: ELEMENT,
    settings: [
      { name: "off", powerW: 0, lowW: 0, highW: 1 },
      { name: "low-heat", powerW: 50, lowW: 20, highW: 70 },
      { name: "high-heat", powerW: 100, lowW: 60, highW: 150 },
    ],
    sources: [MEMORY],
  },
  {
    id: "fan-heater-2kw",
    label: "fan heater, 2 kW (UK/EU)",
    kind: "space-heater",
    isContact: false,
    nominalVoltageV: 230,
    powerFactor: ELEMENT,
    settings: [
      { name: "off", powerW: 0, lowW: 0, highW: 2 },
      { name: "fan-only", powerW: 20, lowW: 10, highW: 30 },
      { name: "low-heat", powerW: 1000, lowW: 850, highW: 1050 },
      { name: "high-heat", powerW: 2000, lowW: 1700, highW: 2100 },
    ],
    sources: [MEMORY],
  },
  {
    id: "fan-heater-3kw",
    label: "fan or convector heater, 3 kW (UK)",
    kind: "space-heater",
    isContact: false,
    nominalVoltageV: 230,
    powerFactor: ELEMENT,
    settings: [
      { name: "off", powerW: 0, lowW: 0, highW: 2 },
      { name: "fan-only", powerW: 25, lowW: 15, highW: 40 },
      { name: "low-heat", powerW: 1500, lowW: 1250, highW: 1600 },
      { name: "high-heat", powerW: 3000, lowW: 2600, highW: 3150 },
    ],
    sources: [PRACTICE, MEMORY],
  },
  {
    id: "oil-radiator-2kw",
    label: "oil-filled radiator, 2 kW (UK/EU)",
    kind: "space-heater",
    isContact: false,
    nominalVoltageV: 230,
    powerFactor: ELEMENT,
    settings: [
      { name: "off", powerW: 0, lowW: 0, highW: 2 },
      { name: "low-heat", powerW: 800, lowW: 600, highW: 900 },
      { name: "medium-heat", powerW: 1200, lowW: 1000, highW: 1300 },
      { name: "high-heat", powerW: 2000, lowW: 1700, highW: 2500 },
    ],
    sources: [MEMORY],
  },
  {
    id: "desk-fan-small",
    label: "mains desk or clip fan, 15-23 cm",
    kind: "personal-fan",
    isContact: false,
    nominalVoltageV: 120,
    powerFactor: { value: 0.6, low: 0.3, high: 0.95 },
    settings: [
      { name: "off", powerW: 0, lowW: 0, highW: 1 },
      { name: "low-speed", powerW: 12, lowW: 5, highW: 20 },
      { name: "high-speed", powerW: 22, lowW: 12, highW: 35 },
    ],
    sources: [TANG, FAN_POWERS, MEMORY],
  },
  {
    id: "desk-fan",
    label: "mains oscillating desk fan, 25-30 cm",
    kind: "personal-fan",
    isContact: false,
    nominalVoltageV: 120,
    powerFactor: { value: 0.75, low: 0.3, high: 0.98 },
    settings: [
      { name: "off", powerW: 0, lowW: 0, highW: 1 },
      { name: "low-speed", powerW: 22, lowW: 12, highW: 30 },
      { name: "high-speed", powerW: 35, lowW: 20, highW: 50 },
    ],
    sources: [PLAID, FAN_POWERS],
  },
  {
    id: "pedestal-fan",
    label: "pedestal fan, 40 cm",
    kind: "personal-fan",
    isContact: false,
    nominalVoltageV: 120,
    powerFactor: { value: 0.9, low: 0.6, high: 0.98 },
    settings: [
      { name: "off", powerW: 0, lowW: 0, highW: 1 },
      { name: "low-speed", powerW: 35, lowW: 20, highW: 45 },
      { name: "high-speed", powerW: 55, lowW: 35, highW: 80 },
    ],
    sources: [PLAID, FAN_POWERS],
  },
  {
    id: "tower-fan",
    label: "tower fan",
    kind: "personal-fan",
    isContact: false,
    nominalVoltageV: 120,
    powerFactor: { value: 0.9, low: 0.6, high: 0.98 },
    settings: [
      { name: "off", powerW: 1, lowW: 0, highW: 2 },
      { name: "low-speed", powerW: 30, lowW: 15, highW: 45 },
      { name: "high-speed", powerW: 50, lowW: 30, highW: 100 },
    ],
    sources: [FAN_POWERS, MEMORY],
  },
  {
    id: "box-fan",
    label: "box fan, 50 cm",
    kind: "personal-fan",
    isContact: false,
    nominalVoltageV: 120,
    powerFactor: { value: 0.95, low: 0.7, high: 0.99 },
    settings: [
      { name: "off", powerW: 0, lowW: 0, highW: 0 },
      { name: "low-speed", powerW: 50, lowW: 35, highW: 70 },
      { name: "high-speed", powerW: 80, lowW: 50, highW: 105 },
    ],
    sources: [PLAID, FAN_POWERS],
  },
  {
    id: "usb-fan",
    label: "USB fan (measured at the mains adapter)",
    kind: "personal-fan",
    isContact: false,
    nominalVoltageV: 120,
    powerFactor: { value: 0.5, low: 0.4, high: 0.6 },
    settings: [
      { name: "off", powerW: 0.1, lowW: 0, highW: 0.3 },
      { name: "low-speed", powerW: 1.5, lowW: 1, highW: 3 },
      { name: "high-speed", powerW: 3, lowW: 2, highW: 5 },
    ],
    sources: [TANG, PRACTICE],
  },
  {
    id: "dc-fan",
    label: "brushless (DC) desk fan with mains adapter",
    kind: "personal-fan",
    isContact: false,
    nominalVoltageV: 120,
    powerFactor: { value: 0.55, low: 0.45, high: 0.95 },
    settings: [
      { name: "off", powerW: 0.5, lowW: 0, highW: 1 },
      { name: "low-speed", powerW: 4, lowW: 2, highW: 8 },
      { name: "high-speed", powerW: 20, lowW: 10, highW: 30 },
    ],
    sources: [TANG, MEMORY],
  },
];
