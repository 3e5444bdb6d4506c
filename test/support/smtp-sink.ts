import { type AddressInfo, createServer, type Socket } from "node:net";

/** A mail as it was taken: who it came from and goes to, and its parts as a reader sees them. */
export type TakenMail = { from: string; to: string[]; subject: string; id: string; text: string; raw: string };

type Options = {
  /** Replies to RCPT of the next mails, such as "450 later" or "550 no such user"; then each is taken. */
  recipients?: string[];
  /** User and password that have to be shown. */
  login?: { user: string; password: string };
};

/** A mail server in this process (RFC 5321, the little of it that is needed) that keeps what it takes. */
export async function smtpSink({ recipients = [], login }: Options = {}) {
  const taken: TakenMail[] = [];
  const heard: string[] = [];
  const sockets = new Set<Socket>();
  const server = createServer((socket) => {
    sockets.add(socket.on("close", () => sockets.delete(socket)));
    socket.on("error", () => socket.destroy());
    converse(socket);
  });

  function converse(socket: Socket): void {
    let [from, to, data, buffer] = ["", [] as string[], null as string[] | null, ""];
    let isKnown = login === undefined;
    /** What is said to a line; null: nothing yet. */
    const replyTo = (line: string): string | null => {
      if (data && line !== ".") {
        data.push(line.replace(/^\./, ""));
        return null;
      }
      if (data) {
        taken.push(readMail(from, to, data));
        data = null;
        return "250 taken";
      }
      heard.push(line);
      const address = /<(.*)>/.exec(line)?.[1] ?? "";
      if (/^EHLO/i.test(line)) return login ? "250-sink\r\n250 AUTH PLAIN" : "250 sink";
      if (/^AUTH PLAIN /i.test(line)) {
        const wanted = Buffer.from(`\0${login?.user}\0${login?.password}`).toString("base64");
        isKnown = line.slice("AUTH PLAIN ".length) === wanted;
        return isKnown ? "235 welcome" : "535 wrong user or password";
      }
      if (/^MAIL/i.test(line)) {
        [from, to] = [address, []];
        return isKnown ? "250 ok" : "530 sign in first";
      }
      if (/^RCPT/i.test(line)) {
        const reply = recipients.shift() ?? "250 ok";
        if (reply.startsWith("2")) to.push(address);
        return reply;
      }
      if (/^DATA/i.test(line)) {
        data = [];
        return "354 go on";
      }
      if (/^QUIT/i.test(line)) return "221 bye";
      return /^(RSET|NOOP)/i.test(line) ? "250 ok" : "502 not known here";
    };
    socket.on("data", (chunk) => {
      buffer += chunk.toString("latin1");
      for (let end = buffer.indexOf("\r\n"); end >= 0; end = buffer.indexOf("\r\n")) {
        const line = buffer.slice(0, end);
        buffer = buffer.slice(end + 2);
        const reply = replyTo(line);
        if (reply !== null) socket.write(`${reply}\r\n`);
        if (reply === "221 bye") socket.end();
      }
    });
    socket.write("220 sink\r\n");
  }

  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  return {
    port: (server.address() as AddressInfo).port,
    taken,
    heard,
    close: () => {
      for (const socket of sockets) socket.destroy();
      return new Promise<void>((resolve) => server.close(() => resolve()));
    },
  };
}

function readMail(from: string, to: string[], lines: readonly string[]): TakenMail {
  const blank = lines.indexOf("");
  const head = lines
    .slice(0, blank)
    .join("\r\n")
    .replace(/\r\n[ \t]+/g, " ");
  const header = (name: string): string => new RegExp(`^${name}: *(.*)$`, "im").exec(head)?.[1]?.trim() ?? "";
  const body = lines.slice(blank + 1).join("\n");
  const coding = header("Content-Transfer-Encoding").toLowerCase();
  const bytes =
    coding === "base64"
      ? Buffer.from(body, "base64")
      : Buffer.from(coding === "quoted-printable" ? fromQuotedPrintable(body.replace(/=\n/g, "")) : body, "latin1");
  return {
    from,
    to,
    subject: fromEncodedWords(header("Subject")),
    id: header("Message-ID"),
    text: bytes.toString("utf8").trimEnd(),
    raw: lines.join("\n"),
  };
}

const fromQuotedPrintable = (text: string): string =>
  text.replace(/=([0-9A-F]{2})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)));

/** RFC 2047. */
const fromEncodedWords = (text: string): string =>
  text.replace(/\?=\s+=\?/g, "?==?").replace(/=\?utf-8\?([QB])\?(.*?)\?=/gi, (_, coding: string, word: string) => {
    if (coding.toUpperCase() === "B") return Buffer.from(word, "base64").toString("utf8");
    return Buffer.from(fromQuotedPrintable(word.replaceAll("_", " ")), "latin1").toString("utf8");
  });
