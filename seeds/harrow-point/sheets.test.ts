import { judgeKitCheck } from '@shaftbook/contract/judge-kit-check'
import { MountDetails } from '@shaftbook/contract/mount-details'
import { beforeAll, describe, expect, it } from 'vitest'
import type { MountRecordRow } from '../builders/record-rows.ts'
import { simulateTerminal, type Scenario } from './scenario.ts'
import { harrowPoint } from './terminals.ts'

const today = '2026-11-24'
let scenario: Scenario
let filled: MountRecordRow[]
beforeAll(() => {
  scenario = simulateTerminal(harrowPoint, today)
  filled = scenario.rows.mount_record.filter(({ details }) => Object.keys(details).length > 0)
}, 60_000)

describe('the sheets of late mounts', () => {
  it('are filled as a whole, as the contract has them', () => {
    expect(filled.length).toBeGreaterThan(20)
    expect(filled.map(({ details }) => MountDetails.parse(details))).toEqual(
      filled.map(({ details }) => ({ blanks: {}, ...details })),
    )
  })

  it('took parts that go together, and say why where one is not as planned', () => {
    const { position: positions, bearing_type: types } = scenario.rows
    const wrong = filled.flatMap(({ positionId, details: { kitCheck = [] } }) => {
      const position = positions.find(({ id }) => id === positionId)
      const type = types.find(({ id }) => id === position?.bearingTypeId)
      if (!position || !type) return [positionId]
      const place = { position, shaftSystem: position.shaftSystem, planned: type, bearing: type }
      const isWrong = judgeKitCheck(kitCheck, place).some(
        ({ verdict }, index) => verdict === 'refused' || (verdict === 'asked' && kitCheck[index]?.reason === ''),
      )
      return isWrong ? [positionId] : []
    })
    expect(wrong).toEqual([])
  })

  it('come up in steps that end at the drive-up, with clearances on the way down', () => {
    const { mount_reading: readings } = scenario.rows
    for (const { id, details, driveUpMm, benchMeanNm, mountedMeanNm } of filled) {
      const steps = details.driveSteps ?? []
      expect(steps.at(-1)?.driveUpMm).toBe(driveUpMm)
      const felt = readings.filter(({ mountRecordId, moment }) => mountRecordId === id && moment === 'step')
      expect(felt).toHaveLength(4)
      for (const { clearanceNm, stepNumber } of felt) {
        expect([1, 2]).toContain(stepNumber)
        expect(clearanceNm).toBeLessThan((benchMeanNm ?? 0) + 20_000)
        expect(clearanceNm).toBeGreaterThan((mountedMeanNm ?? 0) - 20_000)
      }
    }
  })
})

describe('the planned work', () => {
  it('has two sets of blades, three mounts on days to come, and decisions on mounts that stand open', () => {
    const { gauge, mount_plan: plans, mount_decision: decisions, mount_record: records } = scenario.rows
    expect(gauge.map(({ bladesNm }) => bladesNm[0])).toEqual([30_000, 20_000])
    expect(plans.filter(({ plannedFor }) => plannedFor > today)).toHaveLength(3)
    const verdicts = decisions.map(({ mountRecordId }) => records.find(({ id }) => id === mountRecordId)?.verdict)
    expect(verdicts).toEqual(['over', 'under', 'inside'])
  })
})
