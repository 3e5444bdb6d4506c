import type { Metadata } from "next";
import { PageHeading } from "@/app/_components/shell/page-heading";
import { Remark } from "@/app/_components/shell/remark";
import { Section } from "@/app/_components/shell/section";
import { Button } from "@/app/_components/ui/button";
import { DataTable } from "@/app/_components/ui/data-table";
import { EmptyState } from "@/app/_components/ui/empty-state";
import { readAs } from "@/app/_server/read";
import { readComfortLinks } from "@/lib/services/comfort-links/manage";
import { readPlaces } from "@/lib/services/zones/places";
import { IssueLinkForm } from "./_components/issue-link-form";
import { endLinkAction, issueLinkAction } from "./actions";
import styles from "./links.module.css";
import { siteOrigin } from "./origin";

export const metadata: Metadata = { title: "Links for occupants" };

type Props = { params: Promise<{ buildingId: string }> };

export default async function LinksPage({ params }: Props) {
  const id = Number((await params).buildingId);
  const { links, places } = await readAs(
    (ctx) => ({ links: readComfortLinks(ctx, id), places: readPlaces(ctx, id) }),
    `/buildings/${id}/comfort-reports/links`,
  );
  const origin = await siteOrigin();
  return (
    <>
      <PageHeading
        title="Links for occupants"
        lede="Whoever opens a link can file a report for its zone or desk, and sees nothing else."
      />
      <Section
        id="issue"
        title="Make a link"
        remarks={
          <Remark>
            Print the code and put it up in the zone, or send the address. A link can be ended at any time; reports
            stay.
          </Remark>
        }
      >
        <IssueLinkForm action={issueLinkAction.bind(null, id)} places={places} />
      </Section>
      <Section id="links" title="Links in use" wide>
        <DataTable
          caption="Links in use"
          captionHidden
          rows={links}
          rowKey={(row) => row.id}
          columns={[
            { key: "zone", head: "Zone", names: true, cell: (row) => row.zoneCode },
            { key: "desk", head: "Desk", cell: (row) => row.deskCode ?? "whole zone" },
            {
              key: "address",
              head: "Address",
              cell: (row) => (
                <a className={styles.address} href={`/report/${row.token}`}>
                  {`${origin}/report/${row.token}`}
                </a>
              ),
            },
            {
              key: "end",
              head: "End",
              cell: (row) => (
                <form action={endLinkAction}>
                  <input type="hidden" name="buildingId" value={id} />
                  <input type="hidden" name="linkId" value={row.id} />
                  <Button type="submit">End link</Button>
                </form>
              ),
            },
          ]}
          detail={(row) => ({
            summary: `Code for zone ${row.zoneCode}${row.deskCode ? `, desk ${row.deskCode}` : ""}`,
            content: (
              // biome-ignore lint/performance/noImgElement: a drawing of lines gains nothing from an image service
              <img
                className={styles.code}
                src={`/buildings/${id}/comfort-reports/links/${row.id}/code`}
                alt={`QR code of ${origin}/report/${row.token}`}
                width={160}
                height={160}
                loading="lazy"
              />
            ),
          })}
          empty={<EmptyState>No link yet. Make one above for a zone or a desk.</EmptyState>}
        />
      </Section>
    </>
  );
}
