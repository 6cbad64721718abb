import { once } from 'node:events'
import type { AddressInfo } from 'node:net'
import { SMTPServer } from 'smtp-server'

export interface TakenMail {
  readonly from: string
  readonly to: readonly string[]
  /** The whole mail as it came, headers and parts. */
  readonly source: string
}

/** A mail server that keeps what it takes. */
export interface MailServer {
  readonly url: string
  readonly taken: TakenMail[]
  /** Says no to every mail as long as it is set. */
  refuse?: string | undefined
  /** Called when a mail is taken, before the sender is told. */
  onTaken?: (() => Promise<void>) | undefined
  close(): Promise<void>
}

export async function openMailServer(): Promise<MailServer> {
  const taken: TakenMail[] = []
  const smtp = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS', 'AUTH'],
    onData(stream, session, done) {
      const parts: Buffer[] = []
      stream.on('data', (part: Buffer) => parts.push(part))
      stream.on('end', () => {
        if (server.refuse !== undefined) return done(new Error(server.refuse))
        const { mailFrom, rcptTo } = session.envelope
        const from = mailFrom === false ? '' : mailFrom.address
        taken.push({ from, to: rcptTo.map(({ address }) => address), source: Buffer.concat(parts).toString() })
        void tellOnceTaken(done)
      })
    },
  })
  async function tellOnceTaken(done: () => void): Promise<void> {
    await server.onTaken?.()
    done()
  }
  const listening = smtp.listen(0, '127.0.0.1')
  await once(listening, 'listening')
  const { port } = listening.address() as AddressInfo
  const server: MailServer = {
    url: `smtp://127.0.0.1:${port}`,
    taken,
    close: () =>
      new Promise((resolve) => {
        smtp.close(resolve)
      }),
  }
  return server
}

/** A part of a mail by its media type, decoded from quoted-printable or Base64. */
export function mailPart(source: string, mediaType: string): string {
  const boundary = /boundary="([^"]+)"/.exec(source)?.[1]
  const parts = boundary === undefined ? [source] : source.split(`--${boundary}`)
  const found = parts.find((part) => part.toLowerCase().includes(`content-type: ${mediaType}`))
  if (found === undefined) throw new Error(`the mail has no part ${mediaType}:\n${source}`)
  const [head = '', ...body] = found.split('\r\n\r\n')
  const text = body.join('\r\n\r\n')
  if (/base64/i.test(head)) return Buffer.from(text, 'base64').toString()
  if (!/quoted-printable/i.test(head)) return text
  const bytes = text
    .replaceAll(/=\r\n/g, '')
    .replaceAll(/=([0-9A-F]{2})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))
  return Buffer.from(bytes, 'latin1').toString()
}
