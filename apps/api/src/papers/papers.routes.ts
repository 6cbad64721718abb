import { createHash } from 'node:crypto'
import * as contract from '@shaftbook/contract/papers'
import type { FastifyInstance } from 'fastify'
import type { Context } from '../context.ts'
import { FileReply } from '../http/files.ts'
import { route, type Call } from '../http/route.ts'
import { printBlankSheet, printLabels, printMount, type Printed, type Printing } from './papers.service.ts'

export function papersRoutes(app: FastifyInstance, context: Context): void {
  const printing = ({ scope, site, request }: Pick<Call<typeof contract.printMount>, 'scope' | 'site' | 'request'>) =>
    ({
      scope,
      site,
      address: context.config.address ?? `${request.protocol}://${request.host}`,
    }) satisfies Printing
  route(app, contract.printMount, async (call) => pdfOf(await printMount(context, printing(call), call.params.id)))
  route(app, contract.printBlankSheet, async (call) =>
    pdfOf(await printBlankSheet(context, printing(call), call.params.id)),
  )
  route(app, contract.printPositionLabels, async (call) =>
    pdfOf(await printLabels(context, printing(call), call.query)),
  )
}

function pdfOf({ bytes, fileName }: Printed): FileReply {
  return new FileReply({
    bytes: Buffer.from(bytes),
    mediaType: 'application/pdf',
    fileName,
    tag: createHash('sha256').update(bytes).digest('base64url'),
    disposition: 'inline',
  })
}
