import type { ReactNode } from "react";
import styles from "./walk.module.css";

/** Line drawings on a sheet of 48 by 48: what stands out of each when it is met under a desk. */
const DRAWINGS: Readonly<Record<string, ReactNode>> = {
  fanHeater: (
    <>
      <path d="M12 8h24v28H12z" />
      <path d="M16 13h16M16 17h16M16 21h16M16 25h16" />
      <circle cx="18" cy="31" r="2" />
      <circle cx="30" cy="31" r="2" />
      <path d="M14 36v4M34 36v4" />
    </>
  ),
  smallFanHeater: (
    <>
      <path d="M15 16h18v18H15z" />
      <path d="M18 20h12M18 24h12M18 28h12" />
      <path d="M17 34v4M31 34v4" />
    </>
  ),
  oilRadiator: (
    <>
      <path d="M10 12h4v24h-4zM17 12h4v24h-4zM24 12h4v24h-4zM31 12h4v24h-4z" />
      <path d="M10 24h25M36 16h4v16h-4M12 36v4M33 36v4" />
    </>
  ),
  radiant: (
    <>
      <path d="M10 10h28v24H10z" />
      <path d="M14 17h20M14 24h20" strokeWidth="3" />
      <path d="M17 14v6M24 14v6M31 14v6M17 21v6M24 21v6M31 21v6M16 34v5M32 34v5" />
    </>
  ),
  panel: (
    <>
      <path d="M8 12h32" />
      <path d="M12 12v26M36 12v26" />
      <path d="M18 16h12v18H18z" />
      <path d="M21 21c2-2 4 2 6 0M21 27c2-2 4 2 6 0" />
    </>
  ),
  footWarmer: (
    <>
      <path d="M8 36h32v-8L30 16H18L8 28z" />
      <path d="M14 36c0-6 8-6 8 0M26 36c0-6 8-6 8 0" />
    </>
  ),
  mat: (
    <>
      <path d="M6 32l8-14h28l-8 14z" />
      <path d="M15 28c3-4 4 2 7-2s4 2 7-2 3 1 5-2" />
      <path d="M34 32c4 2 4 6 8 6" />
    </>
  ),
  cushion: (
    <>
      <path d="M12 28c-4 0-4 8 0 8h24c4 0 4-8 0-8z" />
      <path d="M14 28V12c0-4 20-4 20 0v16" />
      <path d="M19 22c2-2 3 2 5 0s3 2 5 0" />
    </>
  ),
  throwBlanket: (
    <>
      <path d="M10 10h28v24c-5 4-9-2-14 1s-9 2-14-1z" />
      <path d="M15 17c3-3 5 3 9 0s6 3 9 0M15 24c3-3 5 3 9 0s6 3 9 0" />
    </>
  ),
  deskFan: (
    <>
      <circle cx="24" cy="19" r="12" />
      <circle cx="24" cy="19" r="2" />
      <path d="M24 17c-1-6 5-8 5-5s-4 3-5 5M26 20c5-2 9 3 6 4s-5-2-6-4M22 20c-4 4-9 1-7-1s5 0 7 1" />
      <path d="M24 31v7M16 40h16l-3-2H19z" />
    </>
  ),
  pedestalFan: (
    <>
      <circle cx="24" cy="14" r="9" />
      <circle cx="24" cy="14" r="2" />
      <path d="M24 12c-1-4 4-6 4-4s-3 2-4 4M26 15c4-1 6 2 4 3s-4-1-4-3M22 15c-3 3-7 1-5-1s4 0 5 1" />
      <path d="M24 23v17M14 42h20" />
    </>
  ),
  towerFan: (
    <>
      <path d="M19 6h10v32H19z" />
      <path d="M22 12v20M24 12v20M26 12v20M15 42h18l-3-4H18z" />
    </>
  ),
  boxFan: (
    <>
      <path d="M8 8h32v32H8z" />
      <circle cx="24" cy="24" r="13" />
      <path d="M8 16h32M8 24h32M8 32h32" />
      <circle cx="24" cy="24" r="2" />
    </>
  ),
  usbFan: (
    <>
      <circle cx="24" cy="16" r="8" />
      <circle cx="24" cy="16" r="1.5" />
      <path d="M24 24v6M18 32h12l-2-2h-8z" />
      <path d="M30 32c6 0 4 8 10 8M40 37h5v6h-5z" />
    </>
  ),
};

const OF_CLASS: Readonly<Record<string, string>> = {
  "fan-heater-1500": "fanHeater",
  "fan-heater-900": "smallFanHeater",
  "fan-heater-personal": "smallFanHeater",
  "fan-heater-2kw": "fanHeater",
  "fan-heater-3kw": "fanHeater",
  "oil-radiator-1500": "oilRadiator",
  "oil-radiator-2kw": "oilRadiator",
  "radiant-1500": "radiant",
  "radiant-panel": "panel",
  "foot-warmer-lamp": "footWarmer",
  "heated-mat": "mat",
  "heated-cushion": "cushion",
  "heated-throw": "throwBlanket",
  "desk-fan-small": "deskFan",
  "desk-fan": "deskFan",
  "pedestal-fan": "pedestalFan",
  "tower-fan": "towerFan",
  "box-fan": "boxFan",
  "usb-fan": "usbFan",
  "dc-fan": "deskFan",
};

/** The picture of a class; the words beside it say the same. */
export function ClassPicture({ id }: { id: string }) {
  return (
    <svg className={styles.picture} viewBox="0 0 48 48" aria-hidden="true">
      {DRAWINGS[OF_CLASS[id] ?? ""]}
    </svg>
  );
}

/** Classes that have a picture. */
export const PICTURED_CLASSES: readonly string[] = Object.keys(OF_CLASS);
