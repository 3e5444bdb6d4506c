import { createHash } from "node:crypto";
import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { getStores } from "@/app/_server/stores";
import { PATCH, HEAD as UPLOAD_HEAD } from "@/app/api/v1/buildings/[buildingId]/trend-files/[uploadId]/route";
import { POST as POST_FILE } from "@/app/api/v1/buildings/[buildingId]/trend-files/route";
import { GET as GET_RUN } from "@/app/api/v1/import-runs/[runId]/route";
import { POST as POST_READINGS } from "@/app/api/v1/readings/route";
import { upsertPoint } from "@/db/queries/points";
import { createBuilding } from "@/lib/services/buildings/save";
import { makeCollectorToken } from "@/lib/services/collectors/make";
import { revokeCollectorToken } from "@/lib/services/collectors/manage";
import type { Context } from "@/lib/services/context";
import { addZone } from "@/lib/services/zones/save";
import { buildingInputOf } from "@/test/factories/building";
import { wideCsv } from "@/test/factories/trend-csv";

const SITE = "http://127.0.0.1:3000";
const AIR = "VAV-2-14 ZN-T";
const FILE = wideCsv({ [`${AIR} (°F)`]: [71, 71.5, 72] });
const NEXT_FILE = wideCsv({ [`${AIR} (°F)`]: [71, 71.5, 72, 73] });

let folder: string;
let ctx: Context;
let buildingId: number;
let elsewhere: number;
let token: string;

beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), "collectors-api-"));
  vi.stubEnv("SETPOINT_LEDGER_DATA", folder);
  vi.stubEnv("SETPOINT_LEDGER_LARGEST_FILE_MB", "1");
  ctx = { ...getStores(), actor: { kind: "command-line", name: "test" }, now: Date.now() };
  buildingId = createBuilding(ctx, buildingInputOf());
  elsewhere = createBuilding(ctx, buildingInputOf({ name: "Birch Court" }));
  const zoneId = addZone(ctx, buildingId, { code: "2-14" });
  const sampling = "interval" as const;
  upsertPoint(ctx.db, { buildingId, externalName: AIR, kind: "zone-air-temp", zoneId, fileUnit: "degF", sampling });
  token = makeCollectorToken(ctx, buildingId, { collector: "plant room" }).token;
});
afterAll(async () => {
  const shared = globalThis as unknown as Record<symbol, { worker: { stop(): Promise<void> } }>;
  await shared[Symbol.for("setpoint-ledger.stores")]?.worker.stop();
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true });
});

type Call = {
  method?: string;
  headers?: Record<string, string>;
  body?: Uint8Array | string | null;
  bearer?: string | null;
};

function call(address: string, { method = "POST", headers = {}, body = null, bearer = token }: Call = {}): Request {
  const sent = new Headers(headers);
  if (bearer !== null) sent.set("authorization", `Bearer ${bearer}`);
  if (body instanceof Uint8Array && !sent.has("content-length")) sent.set("content-length", String(body.length));
  return new Request(`${SITE}${address}`, { method, headers: sent, body: body as BodyInit | null });
}

const filesOf = (id: number) => ({ params: Promise.resolve({ buildingId: String(id) }) });
const postFile = (query: string, more: Call = {}, id = buildingId) =>
  POST_FILE(call(`/api/v1/buildings/${id}/trend-files${query}`, { body: FILE, ...more }), filesOf(id));
const postReadings = (body: unknown, more: Call = {}) =>
  POST_READINGS(call("/api/v1/readings", { body: typeof body === "string" ? body : JSON.stringify(body), ...more }));
const getRun = (runId: number, query = "", more: Call = {}) =>
  GET_RUN(call(`/api/v1/import-runs/${runId}${query}`, { method: "GET", ...more }), {
    params: Promise.resolve({ runId: String(runId) }),
  });

async function problemIn(
  response: Response,
): Promise<{ status: number; title: string; detail: string; instance: string }> {
  expect(response.headers.get("content-type")).toBe("application/problem+json");
  const body = await response.json();
  expect(body.status).toBe(response.status);
  return body;
}

describe("a trend file as the body of a call", () => {
  it("is taken with 202, read in its turn, and its result says what a person still has to do", async () => {
    const response = await postFile("?name=../../exports/a.csv&wait=20");
    expect(response.status).toBe(202);
    const body = await response.json();
    expect(response.headers.get("location")).toBe(`/api/v1/import-runs/${body.run}`);
    expect(body).toMatchObject({ result: `/api/v1/import-runs/${body.run}`, settled: true });
    const run = await (await getRun(body.run, "?wait=20")).json();
    expect(run).toMatchObject({
      id: body.run,
      building: buildingId,
      file: { name: "a.csv", byteCount: FILE.length },
      settled: true,
    });
    expect(["waiting", "done"]).toContain(run.state);
    expect(run.file.sha256).toBe(createHash("sha256").update(FILE).digest("hex"));
    // The same file again is the same import.
    expect((await (await postFile("?name=a.csv")).json()).run).toBe(body.run);
  });

  it("is held against the SHA-256 and the length that its sender says, and nothing is kept of a damaged one", async () => {
    const digest = createHash("sha256").update(NEXT_FILE).digest("base64");
    const wrong = await postFile("?name=b.csv", { headers: { "repr-digest": `sha-256=:${digest}:` } });
    expect(await problemIn(wrong)).toMatchObject({
      status: 422,
      detail: expect.stringContaining("damaged on its way"),
    });
    const short = await postFile("?name=b.csv", {
      headers: { "content-length": "9" },
      body: Buffer.from(FILE).toString(),
    });
    expect((await problemIn(short)).detail).toContain("did not come whole");
    expect(readdirSync(path.join(folder, "uploads", "passing"))).toEqual([]);
    const right = await postFile("?name=b.csv", { body: NEXT_FILE, headers: { "repr-digest": `sha-256=:${digest}:` } });
    expect(right.status).toBe(202);
  });

  it("may come in parts, and says where it ends when a part is sent from elsewhere", async () => {
    const file = wideCsv({ [`${AIR} (°F)`]: [71, 71.5, 72, 73, 74] });
    const begun = await postFile("", {
      body: null,
      headers: {
        "upload-complete": "?0",
        "upload-length": String(file.length),
        "content-disposition": "attachment; filename=\"plain.csv\"; filename*=UTF-8''%C3%A9tage.csv",
      },
    });
    expect(begun.status).toBe(201);
    expect(begun.headers.get("upload-limit")).toMatch(/^max-size=1000000, max-append-size=16000000, max-age=\d+$/);
    const address = begun.headers.get("location") ?? "";
    const place = {
      params: Promise.resolve({ buildingId: String(buildingId), uploadId: address.split("/").at(-1) ?? "" }),
    };
    const part = (from: number, to: number, last = false) =>
      PATCH(
        call(address, {
          method: "PATCH",
          body: file.slice(from, to),
          headers: {
            "content-type": "application/partial-upload",
            "upload-offset": String(from),
            "upload-complete": last ? "?1" : "?0",
          },
        }),
        place,
      );
    expect((await part(0, 40)).headers.get("upload-offset")).toBe("40");
    const elsewhereInFile = await part(10, 60);
    expect(elsewhereInFile.headers.get("upload-offset")).toBe("40");
    expect(await problemIn(elsewhereInFile)).toMatchObject({
      status: 409,
      type: "https://iana.org/assignments/http-problem-types#mismatching-upload-offset",
      "expected-offset": 40,
    });
    const head = await UPLOAD_HEAD(call(address, { method: "HEAD" }), place);
    expect(head.status).toBe(204);
    expect(Object.fromEntries(head.headers)).toMatchObject({
      "upload-offset": "40",
      "upload-complete": "?0",
      "upload-length": String(file.length),
      "cache-control": "no-store",
    });
    const done = await part(40, file.length, true);
    expect(done.status).toBe(202);
    expect(done.headers.get("upload-complete")).toBe("?1");
    const { run } = await done.json();
    expect((await (await getRun(run)).json()).file.name).toBe("étage.csv");
  });

  it("is refused when it is too large, empty, or for another building", async () => {
    const large = await postFile("?name=c.csv", { headers: { "content-length": "1000001" } });
    expect(await problemIn(large)).toMatchObject({ status: 413, title: "Payload Too Large" });
    const unannounced = new Uint8Array(1_000_001);
    const stream = new Blob([unannounced]).stream();
    const streamed = new Request(`${SITE}/api/v1/buildings/${buildingId}/trend-files?name=c.csv`, {
      method: "POST",
      body: stream,
      duplex: "half",
      headers: { authorization: `Bearer ${token}` },
    } as RequestInit);
    expect((await POST_FILE(streamed, filesOf(buildingId))).status).toBe(413);
    expect((await problemIn(await postFile("?name=c.csv", { body: new Uint8Array() }))).detail).toContain("empty");
    const other = await problemIn(await postFile("?name=a.csv", {}, elsewhere));
    expect(other).toMatchObject({ status: 403, detail: expect.stringContaining("another building") });
    expect(other.instance).toBe(`/api/v1/buildings/${elsewhere}/trend-files`);
  });
});

describe("readings", () => {
  const readings = [
    { at: "2026-07-06T08:00:00-05:00", value: 71.5 },
    { at: "2026-07-06T08:15:00", value: 71.6 },
  ];

  it("are taken with 202 and counted, with the reason for each that is not stored", async () => {
    const response = await postReadings({ point: AIR, unit: "degF", readings });
    expect(response.status).toBe(202);
    const body = await response.json();
    expect(body).toMatchObject({ readings: 2, accepted: 1, repaired: 0, rejected: 1 });
    expect(body.rejections).toMatchObject([{ point: AIR, at: "2026-07-06T08:15:00" }]);
    expect(await (await getRun(body.run)).json()).toMatchObject({ kind: "readings", state: "done", settled: true });
    expect(await (await postReadings({ point: AIR, unit: "degF", readings })).json()).toMatchObject({
      samples: { added: 0, changed: 0, same: 1 },
    });
  });

  it("are refused as a whole for an unknown point, 5,001 of them, no JSON and too many bytes", async () => {
    const unknown = await problemIn(await postReadings({ point: "AV:1203", readings }));
    expect(unknown).toMatchObject({ status: 422, errors: [{ where: "AV:1203", what: "not mapped" }] });
    const many = Array.from({ length: 5001 }, () => readings[0]);
    expect((await problemIn(await postReadings({ point: AIR, readings: many }))).status).toBe(413);
    expect((await problemIn(await postReadings("{"))).detail).toContain("not JSON");
    expect((await problemIn(await postReadings(" ".repeat(2_000_001)))).status).toBe(413);
    const shapeless = await problemIn(await postReadings({ point: AIR }));
    expect(shapeless.status).toBe(422);
  });
});

describe("who may call", () => {
  it("nobody without a token in force: wrong, revoked and missing ones are answered alike", async () => {
    const revoked = makeCollectorToken(ctx, buildingId, { collector: "old" });
    revokeCollectorToken(ctx, buildingId, revoked.made.id);
    const answers = await Promise.all(
      [null, "x".repeat(43), revoked.token].map(async (bearer) => {
        const response = await postFile("?name=a.csv", { bearer });
        expect(response.headers.get("www-authenticate")).toContain("Bearer");
        return problemIn(response);
      }),
    );
    expect(new Set(answers.map((each) => JSON.stringify(each))).size).toBe(1);
    expect(answers[0]?.status).toBe(401);
    expect((await postReadings({}, { bearer: null })).status).toBe(401);
    expect((await getRun(1, "", { bearer: null })).status).toBe(401);
  });

  it("a token sees imports of its own building only", async () => {
    const other = makeCollectorToken(ctx, elsewhere, { collector: "other" });
    expect((await getRun(1)).status).toBe(200);
    expect(await problemIn(await getRun(1, "", { bearer: other.token }))).toMatchObject({ status: 404 });
    expect((await getRun(Number.NaN)).status).toBe(404);
  });

  it("a caller with wrong tokens is held off after sixty calls in a minute, and one with a good token is not", async () => {
    let last = 0;
    for (let i = 0; i < 70; i++) last = (await getRun(1, "", { bearer: "y".repeat(43) })).status;
    expect(last).toBe(429);
    expect((await getRun(1)).status).toBe(200);
  });
});
