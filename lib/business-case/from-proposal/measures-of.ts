import type { FrozenProposal, FrozenVariant } from "@/lib/proposals/frozen-proposal";
import { LEVER_SCALES, type ZoneLever } from "@/lib/proposals/lever";
import { formatNumber, formatTemperatureDifference, type TemperatureUnit } from "@/lib/units/format";
import type { CaseMeasure } from "../case-input";

/** What is changed in each zone, by the zones' order, with why a lever does nothing where it does nothing. */
export function measuresOf({ inputs, building }: FrozenProposal, { levers, picture }: FrozenVariant): CaseMeasure[] {
  const places = new Map(inputs.zones.map(({ zoneId, code }, place) => [zoneId, { code, place }]));
  return [...levers]
    .sort((a, b) => (places.get(a.zoneId)?.place ?? 0) - (places.get(b.zoneId)?.place ?? 0))
    .map((each) => ({
      zoneCode: places.get(each.zoneId)?.code ?? String(each.zoneId),
      lever: LEVER_SCALES[each.lever].label,
      change: changeWords(each, building.temperatureUnit),
      remark: picture.idle.find((idle) => idle.zoneId === each.zoneId && idle.lever === each.lever)?.reason ?? "",
    }));
}

function changeWords({ lever, amount }: ZoneLever, unit: TemperatureUnit): string {
  const scale = LEVER_SCALES[lever];
  if (scale.unit === "K") return `${scale.amount} ${formatTemperatureDifference(amount, unit).text}`;
  const figure = formatNumber(amount, { decimals: Number.isInteger(amount) ? 0 : 2 });
  const [first, ...of] = scale.amount.split(", ");
  return [`${first} ${figure}${scale.unit === "" ? "" : `\u00a0${scale.unit}`}`, ...of].join(" ");
}
