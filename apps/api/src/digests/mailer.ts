import { createTransport } from 'nodemailer'
import type { MailConfig } from '../config.ts'

export interface Mail {
  readonly to: { readonly name: string; readonly address: string }
  readonly subject: string
  readonly text: string
  readonly html: string
}

export interface Mailer {
  /** Fulfilled once the mail server has taken the mail. */
  send(mail: Mail): Promise<void>
  close(): void
}

/** How long a mail server may keep silent at any point, in ms: shorter than a transaction may last. */
const patienceMs = 6000

export function openMailer({ smtp, from }: MailConfig): Mailer {
  const transport = createTransport({
    url: smtp,
    connectionTimeout: patienceMs,
    greetingTimeout: patienceMs,
    socketTimeout: patienceMs,
    dnsTimeout: patienceMs,
  })
  return {
    async send(mail) {
      await transport.sendMail({ from, ...mail, headers: { 'Auto-Submitted': 'auto-generated' } })
    },
    close: () => transport.close(),
  }
}
