import { Section } from "@/app/_components/shell/section";
import { LinkButton } from "@/app/_components/ui/button";

type Props = { path: string; zones: number; hasRecord: boolean };

/** The next step of a building that has little in it yet. */
export function GettingStarted({ path, zones, hasRecord }: Props) {
  const step =
    zones === 0
      ? { text: "Add the zones: as a table, or one by one.", label: "Add zones", href: `${path}/zones#add` }
      : hasRecord
        ? {
            text: "Bring in a weather year, so that the record can be carried to a whole year.",
            label: "Bring in weather",
            href: `${path}/imports`,
          }
        : {
            text: "Bring in trend logs of zone air temperature and setpoints, and a weather year.",
            label: "Bring in files",
            href: `${path}/imports`,
          };
  return (
    <Section id="next" title="Next step" plain>
      <p>{step.text}</p>
      <p>
        <LinkButton kind="primary" href={step.href}>
          {step.label}
        </LinkButton>
      </p>
    </Section>
  );
}
