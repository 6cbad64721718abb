import { batchMeterReadings, type MeterLineAnswer } from '@shaftbook/contract/meter-readings'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { useSite } from '../../session/site-access.tsx'
import { useNotice } from '../../ui/notice.tsx'
import type { SentLine } from './meter-lines.ts'

const atOnce = 500

/**
 * Sends readings of many meters. `onAnswers` gets the answer to each line as soon as it is there, also where a later part
 * fails: what has no answer was not sent, or is harmless to send again.
 */
export function useMeterBatch(onAnswers: (answers: readonly MeterLineAnswer[]) => void) {
  const { code } = useSite()
  const client = useQueryClient()
  const notice = useNotice()
  return useMutation({
    mutationFn: async (lines: readonly SentLine[]) => {
      const answers: MeterLineAnswer[] = []
      for (let from = 0; from < lines.length; from += atOnce) {
        const readings = lines.slice(from, from + atOnce)
        const reply = await call(batchMeterReadings, { params: { site: code }, body: { readings } })
        onAnswers(reply.lines)
        answers.push(...reply.lines)
      }
      return answers
    },
    onSuccess: (answers) => {
      const taken = answers.filter(({ outcome }) => outcome === 'taken').length
      const refused = answers.length - taken
      const rest =
        refused === 0
          ? ''
          : ` ${refused} ${refused === 1 ? 'is' : 'are'} refused and wait${refused === 1 ? 's' : ''} here.`
      if (taken > 0)
        notice.done(`${taken} ${taken === 1 ? 'reading is' : 'readings are'} entered; due days follow.${rest}`)
    },
    onSettled: () => invalidateSite(client, code),
  })
}
