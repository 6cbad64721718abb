import type { DriveStep, SeatReading, StartUp } from '@shaftbook/contract/mount-details'
import type { MountRecordRow } from '../builders/record-rows.ts'
import type { Random } from '../random.ts'

type Driven = Pick<MountRecordRow, 'driveUpMm' | 'nutAngleDeg' | 'benchMeanNm' | 'reductionNm'>

/** How much of the way up each step ends at. */
const parts = [0.5, 0.8, 1]

/** The steps of a drive-up: half of it, nearly all of it, the end. */
export function driveSteps({ driveUpMm, nutAngleDeg }: Driven): DriveStep[] {
  if (driveUpMm === null) return []
  return parts.map((part, index) => ({
    number: index + 1,
    driveUpMm: Math.round(driveUpMm * part * 50) / 50,
    nutAngleDeg: nutAngleDeg === null ? null : Math.round(nutAngleDeg * part),
    struck: false,
  }))
}

/** What a hand feels at a step, in µm: the blades are 10 apart. */
export function feltAtStep(random: Random, { benchMeanNm, reductionNm }: Driven, { number }: DriveStep): number {
  const part = parts[number - 1] ?? 1
  const thereUm = ((benchMeanNm ?? 0) - part * (reductionNm ?? 0)) / 1000 + random.normal(3, 3)
  return Math.max(10, Math.floor(thereUm / 10) * 10)
}

/** A shaft in three planes and two directions, a little under its nominal diameter as h9 has it. */
export function shaftAsMeasured(random: Random, nominalMm: number): SeatReading[] {
  const underMm = random.integer(1, 4) / 100
  return ([1, 2, 3] as const).flatMap((plane) =>
    (['x', 'y'] as const).map((direction) => ({
      plane,
      direction,
      diameterMm: Math.round((nominalMm - underMm - random.integer(0, 1) / 100) * 100) / 100,
    })),
  )
}

const minutesRun = [15, 30, 60, 120, 180]
/** How far of its rise a bearing is by then: it overshoots while the grease spreads, then it settles. */
const risen = [0.45, 0.75, 1, 1.1, 0.95]

/** The first run, an hour after the mount: it warms up, overshoots a little and settles. */
export function firstRun(random: Random, mountedAt: Date): StartUp {
  const told = { twinTemperatureC: null, zone: null, lockChecked: null, notDoneReason: null, note: '' }
  if (random.chance(0.15)) {
    const notDoneReason = 'The machine stayed locked out until the next shift'
    return { ...told, startedAt: null, readings: [], notDoneReason }
  }
  const [startC, riseC] = [random.integer(9, 22), random.integer(14, 26)]
  const vibrationMmS = random.integer(9, 26) / 10
  return {
    ...told,
    startedAt: new Date(mountedAt.getTime() + 3_600_000).toISOString(),
    readings: minutesRun.map((minutes, index) => ({
      minutes,
      temperatureC: Math.round(startC + riseC * (risen[index] ?? 1)),
      vibrationMmS: index === minutesRun.length - 1 ? vibrationMmS : null,
    })),
    twinTemperatureC: startC + riseC - random.integer(0, 3),
    zone: vibrationMmS <= 2.3 ? 'A' : 'B',
    lockChecked: true,
  }
}
