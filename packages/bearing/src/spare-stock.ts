import { InputError, requireWithin } from './input-error.ts'
import { formula, type Sourced } from './source.ts'

export interface MinimumStock extends Sourced {
  minimum: number
  /** Expected demand during the lead time. */
  leadTimeDemand: number
  /** Probability that this stock covers the lead time. */
  covered: number
}

/**
 * Smallest stock s with P(N ≤ s) of at least the target, for a Poisson demand over the lead time. Demand per year 0 to 1000,
 * lead time 0 to 520 weeks, target 0.5 to 0.9999. A line stop that takes many at once beats it: the engineer sets more. R-STOCK.
 */
export function minimumStock(demandPerYear: number, leadTimeWeeks: number, target = 0.95): MinimumStock {
  requireWithin(demandPerYear, 'demandPerYear', 0, 1000, 'a year')
  requireWithin(leadTimeWeeks, 'leadTimeWeeks', 0, 520, 'weeks')
  requireWithin(target, 'target', 0.5, 0.9999, '')
  const demand = (demandPerYear * leadTimeWeeks) / 52
  let logTerm = -demand
  let covered = Math.exp(logTerm)
  let minimum = 0
  while (covered + 1e-12 < target) {
    minimum += 1
    logTerm += Math.log(demand) - Math.log(minimum)
    covered += Math.exp(logTerm)
  }
  return {
    minimum,
    leadTimeDemand: demand,
    covered: Math.min(1, covered),
    source: formula('Poisson demand over the lead time'),
    rule: 'R-STOCK',
    cautions: ['Demand that comes all at once, as in a line stop, needs more: the engineer sets it.'],
  }
}

export interface OrderAdvice extends Sourced {
  order: boolean
  free: number
}

/** Whether to order: when on hand + on order − reserved has fallen to the minimum, or below it. Whole pieces. R-STOCK. */
export function orderAdvice(stock: {
  onHand: number
  onOrder: number
  reserved: number
  minimum: number
}): OrderAdvice {
  for (const [field, value] of Object.entries(stock)) {
    requireWithin(value, field, 0, 1_000_000, 'pieces')
    if (!Number.isInteger(value))
      throw new InputError('not-a-number', field, `${field} has to be a whole number of pieces.`)
  }
  const free = stock.onHand + stock.onOrder - stock.reserved
  const source = formula('on hand + on order − reserved against the minimum')
  return { order: free <= stock.minimum, free, source, rule: 'R-STOCK', cautions: [] }
}
