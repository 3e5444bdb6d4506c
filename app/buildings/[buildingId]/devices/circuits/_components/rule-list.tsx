import type { Rule, RuleSet } from "@/lib/electrical/circuit/rule-sets";
import { ruleSetLabel } from "@/lib/electrical/circuit/rule-sets";

type Props = { rules: RuleSet; circuit: { multiOutlet: boolean; listedFor100Percent: boolean } };

const CONFIDENCE = { excerpt: "read in excerpt", "second-hand": "second hand", "from-memory": "from memory" } as const;

/** The numbers that this circuit is held against, each with where it stands. */
export function RuleList({ rules, circuit }: Props) {
  const several = circuit.multiOutlet;
  const lines: [string, Rule | null, (value: number) => string][] = [
    [
      "Continuous load counts",
      rules.continuousFactor,
      (value) => (circuit.listedFor100Percent ? "once: listed for 100 %" : `${value} times`),
    ],
    ["One plugged item, by its printed current", several ? rules.singleItemShare : null, share],
    ["All that is fastened in place", several ? rules.fastenedShare : null, share],
    ["Load on one receptacle", several ? rules.receptacleShare : null, (value) => `${100 * value} % of its rating`],
    ["Both halves of a twin socket", rules.twinSocketA, (value) => `${value} A`],
    ["Fuse in a plug", rules.plugFuseA, (value) => `${value} A`],
  ];
  return (
    <>
      <p>{`Rules of ${ruleSetLabel(rules)}; local amendments prevail.`}</p>

      {lines.map(([what, rule, words]) =>
        rule ? (
          <p key={what}>
            {`${what}: ${words(rule.value)}. ${rule.source.title} (${CONFIDENCE[rule.source.confidence]}).`}
          </p>
        ) : null,
      )}
      <p>{`Bands of tripping: ${rules.breakerStandard}, in open air at 25 °C; a warm, crowded panel trips sooner.`}</p>
    </>
  );
}

const share = (value: number): string => `${100 * value} % of the breaker`;
