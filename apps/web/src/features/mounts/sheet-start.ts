import type { Check } from '@shaftbook/contract/judgement'
import { numberOf, rowNumbers, typedNumber } from './sheet-numbers.ts'
import type { Sheet } from './sheet.ts'

/** Above this a bearing is too hot, and this far above its twin it is too: °C and K. */
export const startLimits = { alarmC: 90, aboveTwinK: 30 } as const

export interface StartAnswer {
  outcome: Check['outcome']
  name: string
  sentence: string
}

/** What the temperatures of the first run say so far. */
export function startAnswers(sheet: Sheet): StartAnswer[] {
  const read = sheet.startReadings.flatMap(
    ({ temperatureC }) => typedNumber(temperatureC, rowNumbers.temperatureC) ?? [],
  )
  if (read.length === 0) return []
  const highest = Math.max(...read)
  const twin = numberOf(sheet, 'twinTemperatureC')
  return [alarm(highest), ...(twin === null ? [] : [besideTwin(highest, twin)]), ...course(read)]
}

function alarm(highest: number): StartAnswer {
  const hot = highest > startLimits.alarmC
  return {
    outcome: hot ? 'fail' : 'pass',
    name: 'Highest temperature',
    sentence: hot
      ? `${highest} °C is above ${startLimits.alarmC} °C: stop and find out why.`
      : `${highest} °C, up to ${startLimits.alarmC} °C is usual.`,
  }
}

function besideTwin(highest: number, twin: number): StartAnswer {
  const above = Math.round((highest - twin) * 10) / 10
  const far = above > startLimits.aboveTwinK
  return {
    outcome: far ? 'warning' : 'pass',
    name: 'Beside its twin',
    sentence: `${above} K above it; ${startLimits.aboveTwinK} K and more is a reason to stop and look.`,
  }
}

/** Whether it has settled: the last reading is no higher than the one before. */
function course(read: readonly number[]): StartAnswer[] {
  const [before, last] = read.slice(-2)
  if (before === undefined || last === undefined) return []
  const settled = last <= before
  return [
    {
      outcome: settled ? 'pass' : 'not-proven',
      name: 'Course',
      sentence: settled ? 'It has stopped rising.' : 'It still rises: go on reading until it settles.',
    },
  ]
}
