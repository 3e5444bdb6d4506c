"use client";

import { liveEffect, type Sensitivity } from "@/lib/overcooling/live-effect";
import { formatNumber } from "@/lib/units/format";

type Props = { sensitivity: Sensitivity; typed: { value: number; low: number; high: number }; sign: string };

/** About what the typed value makes of the total; follows every keystroke. */
export function LiveEffectLine({ sensitivity, typed, sign }: Props) {
  const effect = liveEffect(sensitivity, typed);
  const money = (value: number): string => `${sign}${formatNumber(value, { significantDigits: 2 })}`;
  return (
    <p aria-live="polite">
      {effect
        ? `About ${money(effect.low)} to ${money(effect.high)} a year with this value, ${money(effect.stated)} at stated values; ${money(sensitivity.stated)} as it stands. Straight lines and root of squares: the button works it out exactly.`
        : "The value must lie between the lowest and the highest plausible value."}
    </p>
  );
}
