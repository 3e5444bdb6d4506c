import Link from "next/link";
import { currencySign } from "@/app/_components/quantity/money-figure";
import { Range } from "@/app/_components/quantity/range";
import { Remark } from "@/app/_components/shell/remark";
import type { Building } from "@/lib/services/buildings/find";
import type { CostOfOvercooling } from "@/lib/services/overcooling/assess";
import { formatLocal, formatLocalDate } from "@/lib/time/format";
import { type Assessed, isApart } from "../overview-view-model";

type Props = { cost: CostOfOvercooling; assessed: Assessed; building: Building };

/** What stands in the margin beside the headline: target, energy, how much is known, simpler methods. */
export function AssessmentRemarks({ cost, assessed, building }: Props) {
  const sign = currencySign(building.currency);
  const path = `/buildings/${building.id}`;
  return (
    <>
      <Remark title="Target">
        <Link href={`${path}/settings#targetZoneAirTempC`}>Change it in the settings</Link>; figures follow.{" "}
        <Link href={`${path}/target`}>What other targets would mean</Link>.
      </Remark>
      <Remark title="Of it avoidable in a first year">
        <Link href={`${path}/working/avoidable`}>
          <Range range={assessed.avoidable} unit="" prefix={sign} per="a year" />
        </Link>
        {assessed.avoidable.zonesLeftOut.length > 0
          ? `; without the zones with a fix in progress: ${assessed.avoidable.zonesLeftOut.join(", ")}`
          : null}
      </Remark>
      {assessed.heatingSeason ? (
        <Remark title="Heaters outside the season, not in it">
          <Link href={`${path}/working/heaters-outside-season`}>
            <Range range={assessed.heatingSeason} unit="" prefix={sign} per="a year" />
          </Link>
        </Remark>
      ) : null}
      <Remark title="Electricity">
        <Link href={`${path}/working/electricity`}>
          <Range range={assessed.energy.electricKwh} unit="kWh" per="a year" />
        </Link>
      </Remark>
      <Remark title="Heat">
        <Link href={`${path}/working/heat`}>
          <Range range={assessed.energy.heatKwh} unit="kWh" per="a year" />
        </Link>
      </Remark>
      <Remark title="Emissions">
        <Link href={`${path}/working/emissions`}>
          <Range range={assessed.emissionsKgCo2} unit="kg CO₂" per="a year" />
        </Link>
      </Remark>
      <Remark title="Defaults">
        {Math.round(assessed.defaultsShare * 100)} % of the inputs are the tool&rsquo;s own values.
      </Remark>
      {assessed.verifiedBy.map(({ proposalId, title, foundOn }) => (
        <Remark key={proposalId} title="Verified by">
          <Link href={`${path}/proposals/${proposalId}/verification`}>{title}</Link>, found on{" "}
          {formatLocalDate(foundOn)}
        </Remark>
      ))}
      {assessed.lowerTiers.map((tier) => (
        <Remark key={tier.tier} title={`Tier ${tier.tier}, ${tier.label}`}>
          <Range range={tier} unit="" prefix={sign} per="a year" />
          {isApart(tier, assessed.headline) ? (
            <>
              , <Link href="#findings">inconsistent with the headline</Link>
            </>
          ) : null}
        </Remark>
      ))}
      <Remark>Worked out {formatLocal(cost.computedAtMs, building.timeZone, "date-time")}.</Remark>
    </>
  );
}
