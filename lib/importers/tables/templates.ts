import type { TableKind } from "./table-read";

export type TableTemplate = { fileName: string; text: string };

/** Files to start from. Lines that begin with # are left out on reading, so a template sent back unchanged adds nothing. */
export const TEMPLATES: Readonly<Record<TableKind, TableTemplate>> = {
  zones: {
    fileName: "zones.csv",
    text: lines(
      "zone,name,floor,area_m2,air_handler,design_airflow_L/s,minimum_airflow_L/s",
      "# The two lines below are examples; lines that begin with # are left out. Units may be changed in the headings: m2 or ft2; L/s m3/s m3/h or cfm.",
      "# 2-14,Open office north,2,120,AHU-2,420,130",
      "# 2-15,Meeting room,2,24,AHU-2,150,45",
    ),
  },
  desks: {
    fileName: "desks.csv",
    text: lines(
      "desk,zone,note",
      "# The two lines below are examples; lines that begin with # are left out. The zone must be in the building already.",
      "# 2-14-01,2-14,under the north diffuser",
      "# 2-14-02,2-14,",
    ),
  },
  devices: {
    fileName: "devices.csv",
    text: lines(
      "device,kind,class,zone,desk,setting,basis,current_A,resolution_A,voltage_V,power_factor,power_W,hours_per_year,duty",
      "# The two lines below are examples; lines that begin with # are left out. One line a setting; basis is plug-meter clamp nameplate or class-default; duty is 0 to 1.",
      "# H-001,space-heater,fan-heater-1500,2-14,2-14-01,low-heat,clamp,6.2,0.1,119.5,1,,300,0.8",
      "# H-001,space-heater,fan-heater-1500,2-14,2-14-01,high-heat,plug-meter,,,,,1432,150,0.6",
    ),
  },
  bills: {
    fileName: "bills.csv",
    text: lines(
      "from,to,energy_kWh,billed_demand_kW,charges",
      "# The two lines below are examples; lines that begin with # are left out. One line a bill: its first and last day, electricity only. A column month (2025-03) may stand for from and to.",
      "# 2025-01-01,2025-01-31,28150,94,2635.20",
      "# 2025-02-01,2025-02-28,27830,96,2617.60",
    ),
  },
};

function lines(...text: readonly string[]): string {
  return `${text.join("\r\n")}\r\n`;
}
