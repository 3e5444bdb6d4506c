import { Section } from "@/app/_components/shell/section";
import { LinkButton } from "@/app/_components/ui/button";
import { DefinitionList } from "@/app/_components/ui/definition-list";
import { currencyDecimals } from "@/lib/money/money";
import type { FrozenProposal } from "@/lib/proposals/frozen-proposal";
import { hoursWords, seasonWords } from "@/lib/proposals/window-words";
import { formatLocal } from "@/lib/time/format";
import { formatTemperature } from "@/lib/units/format";
import { amountWords, leverSentences } from "../view-model";
import { CircuitsRelieved } from "./circuits-relieved";
import styles from "./proposal.module.css";
import { TempsFigure } from "./temps-figure";
import { TrialCalendarTable } from "./trial-calendar-table";
import { VariantFigures } from "./variant-figures";

type Props = { copy: FrozenProposal; buildingPath: string };

/** A proposal as issued: everything from its frozen copy and nothing else. */
export function IssuedProposal({ copy, buildingPath }: Props) {
  const { building, proposal, plan, variants, inputs } = copy;
  const chosen = variants.find((each) => each.variantId === copy.chosenVariantId);
  const named = variants.map(({ variantId, name, picture }) => ({
    name,
    isChosen: variantId === copy.chosenVariantId,
    picture,
  }));
  const limit = formatTemperature(plan.stopRules.zoneAirTempC, building.temperatureUnit).text;
  return (
    <Section
      id="issued"
      title={`As issued on ${formatLocal(copy.issuedAtMs, building.timeZone, "date")}`}
      wide
      action={<LinkButton href={`${buildingPath}/proposals/${proposal.id}/case`}>Business case</LinkButton>}
    >
      <DefinitionList
        items={[
          { term: "Proposed", value: leverSentences(chosen?.levers ?? [], building.temperatureUnit).join("; ") },
          {
            term: "Season and hours",
            value: `${seasonWords(proposal)}, ${hoursWords(proposal)}`,
          },
          {
            term: "Trial",
            value: plan.switchback
              ? `${plan.switchback.pairs} pairs of alternate weeks in an order drawn with seed ${plan.switchback.seed}`
              : `steps of ${amountWords(plan.stepKPerWeek, plan.stepKPerWeek, "K", building.temperatureUnit)} a week`,
          },
          {
            term: "Stopped by",
            value: `${plan.stopRules.hotReportsPerWeek} hot reports a week, ${plan.stopRules.dissatisfiedPct}\u202f% predicted dissatisfied, or ${limit} on the mean of a day`,
          },
          { term: "Issued by", value: copy.issuedBy },
        ]}
      />
      {plan.switchback?.beginsOn ? <TrialCalendarTable trial={plan.switchback} /> : null}
      <VariantFigures
        variants={named}
        currency={building.currency}
        investment={proposal.investmentMinor / 10 ** currencyDecimals(building.currency)}
        buildingPath={buildingPath}
        workingPage={(place, figure) => `${buildingPath}/proposals/${proposal.id}/working/${place}-${figure}`}
      />
      {chosen ? (
        <CircuitsRelieved
          circuits={chosen.picture.circuits ?? []}
          name={chosen.name}
          buildingPath={buildingPath}
          isIssued
        />
      ) : null}
      {chosen ? (
        <div className={styles.figures}>
          <TempsFigure
            temps={chosen.picture.temps}
            comfort={inputs.comfort}
            unit={building.temperatureUnit}
            name={chosen.name}
          />
        </div>
      ) : null}
    </Section>
  );
}
