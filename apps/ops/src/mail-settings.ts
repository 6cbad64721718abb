import type { MailConfig } from '../../api/src/config.ts'
import type { Environment } from './environment.ts'
import { OperatorError } from './operator-error.ts'

/** The mail server, where one is set. @throws OperatorError where only one of server and sender is set */
export function mailSettings(environment: Environment): { mail?: MailConfig } {
  const { SHAFTBOOK_SMTP: smtp, SHAFTBOOK_MAIL_FROM: from } = environment
  if (smtp === undefined && from === undefined) return {}
  if (smtp === undefined || from === undefined) {
    const [set, missing] = smtp === undefined ? ['MAIL_FROM', 'SMTP'] : ['SMTP', 'MAIL_FROM']
    throw new OperatorError(`SHAFTBOOK_${set} is set alone: mails need SHAFTBOOK_${missing} too.`)
  }
  return { mail: { smtp, from } }
}
