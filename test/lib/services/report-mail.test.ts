import { afterEach, describe, expect, it, vi } from "vitest";
import { issueComfortLink } from "@/lib/services/comfort-links/manage";
import { fileComfortReport } from "@/lib/services/comfort-reports/file";
import { logComfortReport } from "@/lib/services/comfort-reports/log";
import { deleteOldReportDetails } from "@/lib/services/comfort-reports/retention";
import { readReportSteps, takeReportStep } from "@/lib/services/comfort-reports/take-step";
import { mailAnswers } from "@/lib/services/report-mail/mail-answers";
import { mailNewReports } from "@/lib/services/report-mail/mail-new-reports";
import { addMailRecipient, readMailRecipients, removeMailRecipient } from "@/lib/services/report-mail/recipients";
import { sendTestMail } from "@/lib/services/report-mail/send-test-mail";
import { endMailServer, type MailServerInput, readMailServer, setMailServer } from "@/lib/services/report-mail/server";
import { readUnsentAnswers, tryMailAgain } from "@/lib/services/report-mail/standing";
import { smallOffice } from "@/test/factories/office";
import { smtpSink } from "@/test/support/smtp-sink";

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;
const CALL = { origin: "phone", zoneCode: "2-14", thermalSensation: -2, preference: "warmer" } as const;

let close: (() => Promise<void>) | undefined;
afterEach(async () => {
  await close?.();
  close = undefined;
  vi.restoreAllMocks();
});

async function officeWithMail(
  sinkOptions: Parameters<typeof smtpSink>[0] = {},
  changes: Partial<MailServerInput> = {},
) {
  const office = smallOffice({ timeZone: "America/New_York" });
  const sink = await smtpSink(sinkOptions);
  close = sink.close;
  const server: MailServerInput = {
    host: "127.0.0.1",
    port: sink.port,
    security: "none",
    fromAddress: "comfort@example.org",
    siteAddress: "https://ledger.example.org/",
    ...changes,
  };
  setMailServer(office.ctx, office.buildingId, server);
  return { ...office, sink, server, at: (ms: number) => () => office.ctx.now + ms };
}

describe("mail about new reports", () => {
  it("tells of each new report once, without address, desk or what was written", async () => {
    const { ctx, buildingId, zoneId, sink, at } = await officeWithMail();
    logComfortReport(ctx, buildingId, CALL);
    addMailRecipient(ctx, buildingId, { address: "facilities@example.org" });
    const { token } = issueComfortLink(ctx, buildingId, { zoneId });
    fileComfortReport(ctx, token, { ...CALL, note: "my knee hurts", replyAddress: "someone@example.com" });
    const second = logComfortReport(ctx, buildingId, { ...CALL, zoneCode: "2-15", deskCode: "2-15-01" });
    expect(await mailNewReports(ctx, at(0))).toBe(1);
    expect(await mailNewReports(ctx, at(10 * MINUTE_MS))).toBe(0);
    const [mail] = sink.taken;
    expect(sink.taken).toHaveLength(1);
    expect(mail).toMatchObject({ from: "comfort@example.org", to: ["facilities@example.org"] });
    expect(mail?.subject).toMatch(/^2 new comfort reports, 2 zones \(/);
    expect(mail?.text).toContain("zone 2-14: Cool (−2), would like it warmer");
    expect(mail?.text).toContain(`https://ledger.example.org/buildings/${buildingId}/comfort-reports/${second}`);
    expect(mail?.raw).toContain("Auto-Submitted: auto-generated");
    for (const personal of ["knee", "someone@example.com", "2-15-01"]) expect(mail?.raw).not.toContain(personal);
  });

  it("names desk and note where the building has switched it on", async () => {
    const { ctx, buildingId, sink, at } = await officeWithMail({}, { namesDesk: true, repeatsNote: true });
    addMailRecipient(ctx, buildingId, { address: "facilities@example.org" });
    logComfortReport(ctx, buildingId, { ...CALL, deskCode: "2-14-01", note: "cold feet\n. and neck" });
    await mailNewReports(ctx, at(0));
    expect(sink.taken[0]?.text).toContain("zone 2-14, desk 2-14-01");
    expect(sink.taken[0]?.text).toContain("  > cold feet\n  > . and neck");
  });

  it("tells each recipient of its zones alone, and of the reports of a minute in one mail", async () => {
    const { ctx, buildingId, sink, at } = await officeWithMail();
    addMailRecipient(ctx, buildingId, { address: "west@example.org", zoneCodes: "2-15" });
    addMailRecipient(ctx, buildingId, { address: "all@example.org" });
    logComfortReport(ctx, buildingId, CALL);
    expect(await mailNewReports(ctx, at(0))).toBe(1);
    expect(sink.taken.map(({ to }) => to.join())).toEqual(["all@example.org"]);
    logComfortReport(ctx, buildingId, { ...CALL, zoneCode: "2-15" });
    logComfortReport(ctx, buildingId, { ...CALL, zoneCode: "2-15" });
    expect(await mailNewReports(ctx, at(30_000))).toBe(1);
    expect(await mailNewReports(ctx, at(MINUTE_MS))).toBe(1);
    expect(sink.taken.slice(1).map(({ to, subject }) => [to.join(), subject.slice(0, 6)])).toEqual([
      ["west@example.org", "2 new "],
      ["all@example.org", "2 new "],
    ]);
  });

  it("comes once a day at the building's hour, and not where nothing was reported", async () => {
    const { ctx, buildingId, sink } = await officeWithMail();
    addMailRecipient(ctx, buildingId, { address: "daily@example.org", dailyHour: 7 });
    const due = readMailRecipients(ctx, buildingId)[0]?.nextTryAtMs ?? 0;
    expect(new Date(due).toLocaleTimeString("en-GB", { timeZone: "America/New_York" })).toBe("07:00:00");
    logComfortReport(ctx, buildingId, CALL);
    logComfortReport(ctx, buildingId, CALL);
    expect(await mailNewReports(ctx, () => due - 1)).toBe(0);
    expect(await mailNewReports(ctx, () => due)).toBe(1);
    expect(sink.taken[0]?.subject).toMatch(/^2 new/);
    expect(await mailNewReports(ctx, () => due + DAY_MS)).toBe(0);
    expect(readMailRecipients(ctx, buildingId)[0]?.nextTryAtMs).toBe(due + 2 * DAY_MS);
  });

  it("is tried again with longer and longer waits, given up with its reason, and goes on where it stopped", async () => {
    const { ctx, buildingId, sink, at } = await officeWithMail({ recipients: Array(10).fill("450 mailbox busy") });
    addMailRecipient(ctx, buildingId, { address: "facilities@example.org" });
    logComfortReport(ctx, buildingId, CALL);
    const row = () => readMailRecipients(ctx, buildingId)[0];
    let [ms, tries] = [0, 0];
    for (; row()?.givenUpAtMs === null && tries < 20; tries++) {
      await mailNewReports(ctx, at(ms));
      if (tries === 0) expect(row()).toMatchObject({ failures: 1, nextTryAtMs: ctx.now + MINUTE_MS });
      ms = (row()?.nextTryAtMs ?? 0) - ctx.now;
    }
    expect(tries).toBe(10);
    expect(row()?.lastFault).toMatch(/answered: 450 mailbox busy/);
    expect(await mailNewReports(ctx, at(ms))).toBe(0);
    tryMailAgain({ ...ctx, now: ctx.now + ms }, buildingId);
    expect(await mailNewReports(ctx, at(ms))).toBe(1);
    expect(row()).toMatchObject({ failures: 0, lastFault: "", givenUpAtMs: null });
    expect(sink.taken[0]?.subject).toMatch(/^1 new/);
  });

  it("gives an address up at once that the server refuses for good", async () => {
    const { ctx, buildingId, at } = await officeWithMail({ recipients: ["550 no such mailbox"] });
    addMailRecipient(ctx, buildingId, { address: "gone@example.org" });
    logComfortReport(ctx, buildingId, CALL);
    await mailNewReports(ctx, at(0));
    expect(readMailRecipients(ctx, buildingId)[0]?.givenUpAtMs).toBe(ctx.now);
  });

  it("refuses by field an unknown zone, an address twice, and an address that is none", async () => {
    const { ctx, buildingId } = await officeWithMail();
    const id = addMailRecipient(ctx, buildingId, { address: "a@example.org" });
    expect(() => addMailRecipient(ctx, buildingId, { address: "A@example.org" })).toThrow(/on the list already/);
    expect(() => addMailRecipient(ctx, buildingId, { address: "b@example.org", zoneCodes: "2-14, 9-99" })).toThrow(
      /no zone 9-99/,
    );
    expect(() => addMailRecipient(ctx, buildingId, { address: "x\r\nBcc: y@example.org" })).toThrow(/mail address/);
    removeMailRecipient(ctx, buildingId, id);
    expect(() => removeMailRecipient(ctx, buildingId, id)).toThrow(/no longer/);
  });
});

describe("mail of an answer", () => {
  async function answered(sinkOptions: Parameters<typeof smtpSink>[0] = {}, language = "de") {
    const office = await officeWithMail(sinkOptions);
    const { ctx, buildingId, zoneId } = office;
    const { token } = issueComfortLink(ctx, buildingId, { zoneId });
    const filed = fileComfortReport(ctx, token, { ...CALL, language, replyAddress: "someone@example.com" });
    takeReportStep(ctx, buildingId, 1, { answer: "Ab heute kühlen wir weniger." });
    const followToken = filed.status === "taken" ? filed.followToken : null;
    return { ...office, followToken, mailOf: () => readReportSteps(ctx, buildingId, 1)[0]?.mail };
  }

  it("goes in the report's language with its private address, once", async () => {
    const { ctx, sink, at, followToken, mailOf } = await answered();
    expect(mailOf()).toMatchObject({ state: "waiting" });
    expect(await mailAnswers(ctx, at(0))).toBe(1);
    expect(await mailAnswers(ctx, at(DAY_MS))).toBe(0);
    const [mail] = sink.taken;
    expect(mail).toMatchObject({ to: ["someone@example.com"], subject: "Antwort auf Ihre Meldung zur Temperatur" });
    expect(mail?.text).toContain("Ab heute kühlen wir weniger.");
    expect(mail?.text).toContain(`https://ledger.example.org/report/follow/${followToken}`);
    expect(mailOf()).toMatchObject({ state: "sent", settledAtMs: ctx.now });
  });

  it.each([
    ["en", "Answer to your report"],
    ["es", "Respuesta a su aviso"],
    ["fr", "Réponse à votre message"],
    ["pt", "Answer to your report"],
  ])("for a report in %s begins with %s", async (language, subject) => {
    const { ctx, sink, at } = await answered({}, language);
    await mailAnswers(ctx, at(0));
    expect(sink.taken[0]?.subject).toContain(subject);
  });

  it("is not sent once the address is deleted, which nothing else has kept", async () => {
    const { ctx, buildingId, sink, mailOf } = await answered({ recipients: ["451 someone@example.com is busy"] });
    await mailAnswers(ctx, () => ctx.now);
    expect(mailOf()?.fault).toMatch(/451 the address is busy/);
    const later = ctx.now + 400 * DAY_MS;
    deleteOldReportDetails({ ...ctx, now: later });
    for (const table of ["report_answer_mail", "comfort_report", "comfort_report_event"])
      expect(JSON.stringify(ctx.db.$client.prepare(`select * from ${table}`).all())).not.toContain("someone@");
    expect(await mailAnswers(ctx, () => later)).toBe(0);
    expect(sink.taken).toEqual([]);
    expect(readUnsentAnswers(ctx, buildingId)).toMatchObject([{ reportId: 1, state: "no-address" }]);
  });

  it("is shown as failed with the reason when the address is refused for good, and can be tried again", async () => {
    const { ctx, buildingId, sink, at, mailOf } = await answered({ recipients: ["550 no such mailbox"] });
    await mailAnswers(ctx, at(0));
    expect(mailOf()).toMatchObject({ state: "failed", fault: expect.stringContaining("550 no such mailbox") });
    tryMailAgain(ctx, buildingId);
    expect(await mailAnswers(ctx, at(0))).toBe(1);
    expect(sink.taken).toHaveLength(1);
  });

  it("is not promised where there is no mail server or no address", async () => {
    const { ctx, buildingId, at, mailOf } = await answered();
    endMailServer(ctx, buildingId);
    expect(await mailAnswers(ctx, at(0))).toBe(0);
    expect(mailOf()).toMatchObject({ state: "waiting" });
    const other = smallOffice();
    logComfortReport(other.ctx, other.buildingId, { ...CALL, replyAddress: "someone@example.com" });
    takeReportStep(other.ctx, other.buildingId, 1, { answer: "Done." });
    expect(readReportSteps(other.ctx, other.buildingId, 1)[0]?.mail).toBeNull();
  });
});

describe("the mail server of a building", () => {
  const login = { user: "ledger", password: "correct horse" };

  it("is signed in to with a password that no page, refusal or log shows", async () => {
    const logged = ["log", "error", "warn", "info"].map((name) => vi.spyOn(console, name as "log"));
    const { ctx, buildingId, sink, server } = await officeWithMail({ login }, login);
    await sendTestMail(ctx, buildingId, { to: "me@example.org" });
    expect(sink.taken).toHaveLength(1);
    expect(JSON.stringify(readMailServer(ctx, buildingId))).not.toContain(login.password);
    expect(readMailServer(ctx, buildingId)).toMatchObject({ user: "ledger", hasPassword: true });
    setMailServer(ctx, buildingId, { ...server, password: "", repeatsNote: true });
    await sendTestMail(ctx, buildingId, { to: "me@example.org" });
    expect(sink.taken).toHaveLength(2);
    setMailServer(ctx, buildingId, { ...server, password: "wrong one" });
    const refused = sendTestMail(ctx, buildingId, { to: "me@example.org" });
    await expect(refused).rejects.toThrow(/refused the user name or password: 535/);
    await expect(refused).rejects.not.toThrow(/wrong one/);
    expect(logged.flatMap(({ mock }) => mock.calls)).toEqual([]);
  });

  it("gets no password over an open connection, and none that was meant for another server", async () => {
    const { ctx, buildingId, server } = await officeWithMail({ login }, login);
    expect(() => setMailServer(ctx, buildingId, { ...server, host: "mail.example.org" })).toThrow(
      /encrypted connection/,
    );
    expect(() =>
      setMailServer(ctx, buildingId, { ...server, host: "mail.example.org", security: "tls", password: "" }),
    ).toThrow(/password that belongs/);
  });

  it("is sent nothing when it offers no encrypted connection that was asked for", async () => {
    const { ctx, buildingId, sink } = await officeWithMail({ login }, { ...login, security: "starttls" });
    await expect(sendTestMail(ctx, buildingId, { to: "me@example.org" })).rejects.toThrow();
    expect(sink.taken).toEqual([]);
    expect(sink.heard.filter((line) => /^(AUTH|MAIL)/.test(line))).toEqual([]);
  });

  it("is named when it cannot be reached, and faults of the form are told by field", async () => {
    const { ctx, buildingId, server } = await officeWithMail();
    await close?.();
    await expect(sendTestMail(ctx, buildingId, { to: "me@example.org" })).rejects.toThrow(
      `The mail server at 127.0.0.1, port ${server.port} could not be reached.`,
    );
    const wrong = { ...server, host: "not a host", port: 0, fromAddress: "nobody", siteAddress: "ledger/x" };
    expect(() => setMailServer(ctx, buildingId, wrong)).toThrow(/4 fields/);
    const stranger = { ...ctx, actor: { kind: "anonymous" as const } };
    expect(() => readMailServer(stranger, buildingId)).toThrow(/Sign in/);
    await expect(sendTestMail(stranger, buildingId, { to: "me@example.org" })).rejects.toThrow(/Sign in/);
  });
});
