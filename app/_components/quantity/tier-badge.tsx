import { Tag } from "@/app/_components/ui/tag";

type Props = {
  tier: number;
  /** What the figure rests on, such as "measured zones, modelled plant". */
  basis: string;
};

/** How much of a figure was measured. */
export function TierBadge({ tier, basis }: Props) {
  return (
    <Tag>
      tier {tier}, {basis}
    </Tag>
  );
}
