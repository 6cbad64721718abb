import { checkDose } from '@shaftbook/bearing/grease'
import type { GreaseTask } from '@shaftbook/contract/grease-plans'
import { takesGrease } from '@shaftbook/contract/greasing'
import type { NewWalkStop } from '@shaftbook/contract/round-walks'
import { fieldError, notFound } from '../domain-error.ts'
import { findGreaseName } from '../greasing/plans.store.ts'
import type { Work } from '../meters/work.ts'
import { findGun, type GunRow } from './walks.store.ts'

export type StopGreasing = NonNullable<NewWalkStop['greasing']>

/**
 * The dose that was given, in g: strokes times what a stroke of the gun gave that day, or what was weighed; null where the
 * task takes no grease.
 */
export async function doseOf(
  work: Work,
  task: GreaseTask,
  greasing: StopGreasing,
  doneAt: Date,
): Promise<number | null> {
  const { gunId, strokes, gramsPerStroke, doseG } = greasing
  if (!takesGrease(task)) {
    if (doseG === null && strokes === null && gunId === null) return null
    throw fieldError('not-allowed-here', 'greasing.doseG', 'No grease goes in at this stop: leave the dose empty.')
  }
  if (gunId !== null) await checkGun(work, greasing, gunId, doneAt)
  if (strokes !== null && gramsPerStroke !== null && doseG === null)
    return Math.round(strokes * gramsPerStroke * 1000) / 1000
  if (strokes === null && gramsPerStroke === null && doseG !== null) return doseG
  const message = 'A dose is strokes with what a stroke gives, or grams: enter one of the two.'
  throw fieldError('request-invalid', 'greasing.doseG', message)
}

/**
 * The gun is still what it was taken for. What was changed at the gun after the dose says nothing of the dose: a record
 * that comes late is not held against it.
 */
async function checkGun(work: Work, greasing: StopGreasing, gunId: string, doneAt: Date): Promise<void> {
  const gun = await findGun(work.tx, gunId)
  if (!gun) throw notFound('grease gun', 'greasing.gunId')
  if (gun.updatedAt > doneAt) return
  await checkLoad(work, gun, greasing.greaseId)
  const { gramsPerStroke } = greasing
  if (gramsPerStroke === null || gramsPerStroke === gun.gramsPerStroke) return
  const message = `A stroke of ${gun.name} gives ${gun.gramsPerStroke} g, not ${gramsPerStroke} g: count the dose anew.`
  throw fieldError('gun-changed', 'greasing.gramsPerStroke', message)
}

async function checkLoad(work: Work, gun: GunRow, greaseId: string | null): Promise<void> {
  if (gun.greaseId === null || gun.greaseId === greaseId) return
  const loaded = await findGreaseName(work.tx, gun.greaseId)
  const message = `${gun.name} is loaded with ${loaded}: that is not the grease entered here. Take the right gun, or say first what this one is loaded with.`
  throw fieldError('grease-not-planned', 'greasing.gunId', message)
}

/** More than 1.5 times the planned dose goes in only where the person says that it is meant so, and why. R-OVER. */
export function checkOverdose(body: NewWalkStop, doseG: number | null, plannedDoseG: number | null): void {
  if (doseG === null || plannedDoseG === null) return
  const { verdict, ratio, cautions } = checkDose(doseG, plannedDoseG)
  if (verdict !== 'over' && verdict !== 'far-over') return
  const times = `${doseG} g is ${ratio} times the planned ${plannedDoseG} g.`
  if (!body.overdoseConfirmed) {
    throw fieldError('overdose-not-confirmed', 'overdoseConfirmed', [times, ...cautions].join(' '))
  }
  if (body.extraReason.length < 3) {
    throw fieldError('reason-missing', 'extraReason', `${times} Say in a few words why so much went in.`)
  }
}
