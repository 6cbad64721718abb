import { InputError } from '@shaftbook/bearing/input-error'
import { allCalculations } from '@shaftbook/contract/calculations/all-calculations'
import type { Calculation, CalculationResult } from '@shaftbook/contract/calculations/calculation'
import type { FastifyInstance } from 'fastify'
import { fieldError } from '../domain-error.ts'
import { route } from '../http/route.ts'

/** Every calculation by its name. Nothing is read or stored. */
export function calculationRoutes(app: FastifyInstance): void {
  for (const calculation of allCalculations)
    route(app, calculation.endpoint, async ({ body }) => answer(calculation, body))
}

function answer({ run }: Calculation, input: Readonly<Record<string, unknown>>): CalculationResult {
  try {
    return run(input)
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    throw fieldError('not-calculable', error.field.replaceAll(/\[(\d+)\]/g, '.$1'), error.message, { cause: error })
  }
}
