import fc from "fast-check";
import { expect, it } from "vitest";
import {
  LineDropped,
  type PartAnswer,
  type PartRequest,
} from "@/app/buildings/[buildingId]/imports/_components/part-transport";
import { PART_BYTES, Refused, sendInParts } from "@/app/buildings/[buildingId]/imports/_components/send-in-parts";

const outcome = { fileName: "a.csv", state: "received" as const, message: "Received.", runId: 1 };
const answer = (status: number, values: Partial<PartAnswer> = {}): PartAnswer => ({
  status,
  offset: null,
  location: null,
  detail: "",
  outcome: null,
  ...values,
});

/** A server that keeps offsets, behind a line that does what `line` says of each request in turn. */
function server(size: number, line: (request: PartRequest, count: number) => "drop" | "half" | number | null) {
  const log: string[] = [];
  const stored: Uint8Array[] = [];
  const state = { begun: false, length: 0 };
  const transport = async (request: PartRequest): Promise<PartAnswer> => {
    const { method, headers = {}, content } = request;
    const fate = line(request, log.length);
    log.push(method);
    if (fate === "drop") throw new LineDropped();
    if (typeof fate === "number") return answer(fate, { detail: "no" });
    if (method === "POST" && headers["upload-complete"] === "?1") {
      if (fate === "half") throw new LineDropped();
      state.length = content?.size ?? 0;
      return answer(200, { outcome });
    }
    if (method === "POST") {
      state.begun = true;
      return answer(201, { location: "/u/1", offset: 0 });
    }
    if (!state.begun) return answer(404);
    if (method === "HEAD") return answer(204, { offset: state.length });
    if (Number(headers["upload-offset"]) !== state.length) return answer(409, { offset: state.length });
    const bytes = new Uint8Array((await content?.arrayBuffer()) ?? new ArrayBuffer(0));
    const kept = fate === "half" ? bytes.subarray(0, bytes.length >> 1) : bytes;
    stored.push(kept);
    state.length += kept.length;
    if (fate === "half") throw new LineDropped();
    return headers["upload-complete"] === "?1" && state.length === size
      ? answer(200, { outcome })
      : answer(204, { offset: state.length });
  };
  return { transport, log, stored, state };
}

function sending(file: File, transport: (request: PartRequest) => Promise<PartAnswer>, known: string | null = null) {
  const rests: number[] = [];
  const addresses: (string | null)[] = [];
  const work = sendInParts({
    file,
    base: "/uploads",
    known,
    transport,
    signal: new AbortController().signal,
    onProgress: () => {},
    onAddress: (address) => addresses.push(address),
    onRest: (ms) => rests.push(ms),
    rest: async () => {},
  });
  return { work, rests, addresses };
}

const BYTES = new Uint8Array(PART_BYTES + 1000).map((_, i) => i % 251);

function largeFile(size: number): File {
  return new File([BYTES.subarray(0, size)], "a.csv", { lastModified: 5 });
}

it("sends a small file in one request, again after a dropped line", async () => {
  const far = server(100, (_, count) => (count < 2 ? "drop" : null));
  const { work, rests } = sending(largeFile(100), far.transport);
  expect(await work).toEqual(outcome);
  expect(far.log).toEqual(["POST", "POST", "POST"]);
  expect(rests).toEqual([1000, 2000, 0]);
});

it("goes on after a part that was cut off from what the server has of it, byte for byte", async () => {
  const file = largeFile(PART_BYTES + 1000);
  const far = server(file.size, (_, count) => (count === 1 ? "half" : null));
  const { work, addresses } = sending(file, far.transport);
  expect(await work).toEqual(outcome);
  expect(far.log).toEqual(["POST", "PATCH", "HEAD", "PATCH"]);
  expect(far.state.length).toBe(file.size);
  expect(Buffer.concat(far.stored).equals(Buffer.from(await file.arrayBuffer()))).toBe(true);
  expect(new Set(addresses)).toEqual(new Set(["/u/1"]));
});

it("gets a file whole through any line that lets a request through now and then", async () => {
  const file = largeFile(PART_BYTES + 5);
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.constantFrom<"drop" | "half" | number | null>("drop", "half", 503, 408, null), { maxLength: 12 }),
      async (fates) => {
        const far = server(file.size, (_, count) => fates[count] ?? null);
        expect(await sending(file, far.transport).work).toEqual(outcome);
        expect(far.state.length).toBe(file.size);
      },
    ),
    { numRuns: 12, seed: 20_261_125 },
  );
});

it("rests longer each time the line drops, up to half a minute", async () => {
  const far = server(10, (_, count) => (count < 7 ? "drop" : null));
  const { work, rests } = sending(largeFile(10), far.transport);
  await work;
  expect(rests).toEqual([1000, 2000, 4000, 8000, 16_000, 30_000, 30_000, 0]);
});

it("makes its parts smaller where something on the way takes no larger ones", async () => {
  const file = largeFile(PART_BYTES + 1000);
  const far = server(file.size, ({ content }) => ((content?.size ?? 0) > 3_000_000 ? 413 : null));
  expect(await sending(file, far.transport).work).toEqual(outcome);
  expect(far.state.length).toBe(file.size);
});

it("goes on with an upload that was begun before, and begins anew when it is no longer there", async () => {
  const file = largeFile(PART_BYTES + 1000);
  const far = server(file.size, () => null);
  const { work, addresses } = sending(file, far.transport, "/u/gone");
  expect(await work).toEqual(outcome);
  expect(far.log.slice(0, 2)).toEqual(["HEAD", "POST"]);
  expect(addresses.slice(0, 2)).toEqual([null, "/u/1"]);
});

it.each([403, 422, 507, 413])("gives up when the server refuses the file with %i, and says why", async (status) => {
  const far = server(100_000, () => status);
  await expect(sending(largeFile(100_000), far.transport).work).rejects.toThrow(Refused);
  expect(far.log.length).toBeLessThan(8);
});
