import { createTransport } from 'nodemailer';

/** One message to one address, in plain text. */
export interface Mail {
  readonly to: string;
  readonly subject: string;
  readonly text: string;
  /** Tells the message from every other: a mail server that gets it twice can know it. */
  readonly messageId?: string;
  /** Ends messages of this kind, by one click where the mail program knows how (RFC 8058). */
  readonly unsubscribeUrl?: string;
}

/** Where messages go: a mail server, or, without one, the terminal of whoever runs the service. */
export interface Mailer {
  /** False where messages are only printed. */
  readonly reachesMailboxes: boolean;
  /** Resolves once the mail server has taken it. Rejects with `MailError`. */
  send(mail: Mail): Promise<void>;
  close(): void;
}

/** A message was not taken. `isForGood`: the address itself was refused, and to try again would be no use. */
export class MailError extends Error {
  override readonly name = 'MailError';
  readonly isForGood: boolean;

  constructor(message: string, isForGood: boolean, cause: unknown) {
    super(message, { cause });
    this.isForGood = isForGood;
  }
}

const TIMEOUT_MS = 20_000;

/** Sends through the server of `smtpUrl` (smtp:// or smtps://). */
export function smtpMailer(smtpUrl: string, from: string): Mailer {
  const transport = createTransport(
    {
      url: smtpUrl,
      pool: true,
      connectionTimeout: TIMEOUT_MS,
      greetingTimeout: TIMEOUT_MS,
      socketTimeout: TIMEOUT_MS,
      disableFileAccess: true,
      disableUrlAccess: true,
    },
    { from },
  );
  return {
    reachesMailboxes: true,
    send: async (mail) => {
      try {
        await transport.sendMail(headed(mail));
      } catch (error) {
        throw new MailError(`The mail server did not take a message to ${mail.to}.`, isForGood(error), error);
      }
    },
    close: () => transport.close(),
  };
}

/** Without a mail server: whoever runs the service reads the messages on its standard output, and may pass them on. */
export function printingMailer(print: (text: string) => void): Mailer {
  return {
    reachesMailboxes: false,
    send: async ({ to, subject, text }) => print(`A message to ${to}: ${subject}\n${text}`),
    close: () => undefined,
  };
}

function headed({ unsubscribeUrl, ...mail }: Mail) {
  if (unsubscribeUrl === undefined) return mail;
  const headers = {
    'List-Unsubscribe': `<${unsubscribeUrl}>`,
    'List-Unsubscribe-Post': 'List-Unsubscribe=One-Click',
  };
  return { ...mail, headers };
}

/**
 * In answer to RCPT TO, codes 550, 551 and 553 tell of the mailbox (RFC 5321, section 4.2.3), unless they give policy
 * as their reason (RFC 3463: 5.7), as a server does that does not know us. All others may pass.
 */
function isForGood(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  // What nodemailer hangs on its errors; each is looked at before it is believed.
  const { responseCode, command, response } = error as Error & Record<string, unknown>;
  const isPolicy = typeof response === 'string' && /^\d{3}[ -]5\.7\./.test(response);
  return command === 'RCPT TO' && [550, 551, 553].includes(Number(responseCode)) && !isPolicy;
}
