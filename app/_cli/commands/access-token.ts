import { makeCollectorToken } from "@/lib/services/collectors/make";
import { listCollectors, revokeCollectorToken } from "@/lib/services/collectors/manage";
import { withContext } from "../context";
import { readArguments, readBuildingId, UsageError } from "../usage";

/**
 * `access token make|list|revoke --building ID`: tokens with which a program may bring trend files and readings to one
 * building. The token is printed when it is made, this once.
 */
export async function accessToken(args: string[]): Promise<number> {
  const { values, positionals } = readArguments(args, {
    building: { type: "string" },
    collector: { type: "string" },
    token: { type: "string" },
    json: { type: "boolean" },
  });
  const buildingId = readBuildingId(values.building);
  const [verb] = positionals;
  return withContext(async (ctx) => {
    const print = (result: unknown, text: string) =>
      void process.stdout.write(values.json ? `${JSON.stringify(result)}\n` : text);
    switch (verb) {
      case "make": {
        const made = makeCollectorToken(ctx, buildingId, { collector: values.collector ?? "" });
        print(
          { token: made.token, ...made.made },
          `${made.token}\nToken ${made.made.id}, for ${made.made.collector}. It is shown this once.\n`,
        );
        return 0;
      }
      case "list": {
        const tokens = listCollectors(ctx, buildingId);
        const when = (ms: number | null) => (ms === null ? "never" : new Date(ms).toISOString());
        const lines = tokens.map(
          (each) =>
            `${each.id}  ${each.collector}  made ${when(each.createdAtMs)} by ${each.createdBy}  last used ${when(each.lastUsedAtMs)}${each.revokedAtMs === null ? "" : `  revoked ${when(each.revokedAtMs)}`}\n`,
        );
        print({ tokens }, lines.join("") || "No token yet.\n");
        return 0;
      }
      case "revoke": {
        const tokenId = Number(values.token);
        if (!Number.isSafeInteger(tokenId))
          throw new UsageError("Give the token's number with --token; `access token list` shows it.");
        revokeCollectorToken(ctx, buildingId, tokenId);
        print({ revoked: tokenId }, `Token ${tokenId} is revoked.\n`);
        return 0;
      }
      default:
        throw new UsageError("Say make, list or revoke.");
    }
  });
}
