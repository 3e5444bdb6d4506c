import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Section } from "@/app/_components/shell/section";
import { LinkButton } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { DefinitionList } from "@/app/_components/ui/definition-list";
import { Disclosure } from "@/app/_components/ui/disclosure";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { readBuilding } from "@/lib/services/buildings/find";
import { type ListedProfile, listProfiles } from "@/lib/services/mapping-profiles/manage";
import { formatLocal } from "@/lib/time/format";
import { ProfileForm } from "./_components/profile-form";
import { profileAction } from "./actions";
import { countWords, profilePoints, shapeWords, versionWords } from "./view-model";

export const metadata: Metadata = { title: "Mapping profiles" };

type Props = { params: Promise<{ buildingId: string }> };

/** Points of one profile that are written out; a page stays light with thousands. */
const MOST_POINTS = 500;

export default async function ProfilesPage({ params }: Props) {
  const id = Number((await params).buildingId);
  const imports = `/buildings/${id}/imports`;
  const { building, profiles, zones } = await readAs(
    (ctx) => ({ building: readBuilding(ctx, id), ...listProfiles(ctx, id) }),
    `${imports}/profiles`,
  );
  return (
    <>
      <PageHeading
        title="Mapping profiles"
        lede="How the files of a source are mapped. A file that fits one is imported without a question; one that does not fit shows where."
      />
      {profiles.length === 0 ? (
        <EmptyState action={<LinkButton href={imports}>Back to imports</LinkButton>}>
          No profile yet. Confirm the mapping of a trend file, and it is kept here for the next one.
        </EmptyState>
      ) : null}
      {profiles.map((profile) => (
        <Section key={profile.id} id={`profile-${profile.id}`} title={profile.name} plain>
          <DefinitionList items={profileItems(profile, building.timeZone)} />
          <Disclosure summary={`Points of ${profile.name}`}>
            <DataTable
              caption={`Points of ${profile.name}, version ${profile.version}`}
              captionHidden
              rows={profilePoints(profile, zones).slice(0, MOST_POINTS)}
              rowKey={(row) => row.name}
              columns={[
                { key: "name", head: "Point", names: true, cell: (row) => row.name },
                { key: "is", head: "Is", cell: (row) => row.is },
                { key: "zone", head: "Zone", cell: (row) => row.zone },
                { key: "unit", head: "Unit", cell: (row) => row.unit },
              ]}
            />
            {Object.keys(profile.content.points).length > MOST_POINTS ? (
              <p>{`And ${Object.keys(profile.content.points).length - MOST_POINTS} more.`}</p>
            ) : null}
          </Disclosure>
          {profile.retiredAtMs === null ? (
            <ProfileForm
              action={profileAction.bind(null, { buildingId: id, profileId: profile.id })}
              id={profile.id}
              name={profile.name}
            />
          ) : null}
        </Section>
      ))}
    </>
  );
}

function profileItems(profile: ListedProfile, timeZone: string): { term: string; value: string }[] {
  const { retiredAtMs, retiredBy, earlier } = profile;
  return [
    ...(retiredAtMs === null
      ? []
      : [{ term: "Retired", value: `${formatLocal(retiredAtMs, timeZone, "date-time")} by ${retiredBy}` }]),
    { term: "Says", value: versionWords(profile, timeZone) },
    { term: "Files", value: shapeWords(profile) },
    { term: "Points", value: countWords(profile) },
    ...(earlier.length > 0
      ? [{ term: "Earlier", value: earlier.map((each) => versionWords(each, timeZone)).join(". ") }]
      : []),
  ];
}
