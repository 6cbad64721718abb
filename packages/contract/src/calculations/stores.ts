import { shelfLife } from '@shaftbook/bearing/shelf-life'
import { minimumStock, orderAdvice } from '@shaftbook/bearing/spare-stock'
import { calculation } from './calculation.ts'
import { choice, count, day, optional, quantity } from './field.ts'
import { figure, saying, whether, word } from './figure.ts'

const stock = calculation({
  name: 'stock-minimum',
  group: 'kit',
  title: 'Minimum stock of a spare',
  words: 'The smallest s with P(N ≤ s) at the target, for a Poisson demand over the lead time.',
  input: {
    demandPerYear: quantity('Demand', 'a year', 0, 1000),
    leadTimeWeeks: quantity('Lead time', 'weeks', 0, 520, 'The 90th percentile of what it took'),
    target: optional(quantity('Covered with probability', '', 0.5, 0.9999, '0.95 where it is left empty')),
  },
  result: {
    minimum: figure('Minimum', 'pieces'),
    leadTimeDemand: figure('Demand over the lead time', 'pieces'),
    covered: figure('Covered with probability', ''),
  },
  run: ({ demandPerYear, leadTimeWeeks, target }) => minimumStock(demandPerYear, leadTimeWeeks, target ?? undefined),
})

const order = calculation({
  name: 'order-advice',
  group: 'kit',
  title: 'Is it time to order',
  words: 'Order when on hand + on order − reserved has fallen to the minimum, or below it.',
  input: {
    onHand: count('On hand', 'pieces', 0, 1_000_000),
    onOrder: count('On order', 'pieces', 0, 1_000_000),
    reserved: count('Reserved', 'pieces', 0, 1_000_000),
    minimum: count('Minimum', 'pieces', 0, 1_000_000),
  },
  result: { order: whether('Order now'), free: figure('On hand + on order − reserved', 'pieces') },
  run: (stock) => orderAdvice(stock),
})

const shelf = calculation({
  name: 'shelf-life',
  group: 'kit',
  title: 'Last day on the shelf',
  words:
    'Pack date plus 36 months for bearings and grease, 24 for sealed bearings, 60 for seals; opened grease 12 months from opening.',
  input: {
    item: choice('Item', {
      bearing: 'open bearing in its pack',
      'sealed-bearing': 'sealed bearing',
      grease: 'grease',
      seal: 'seal or O-ring',
    }),
    packed: day('Pack date'),
    opened: optional(day('Opened', 'For grease')),
    today: day('Today'),
  },
  result: { expires: saying('Last day'), verdict: word('Verdict', { good: 'good', expired: 'expired' }) },
  run: ({ item, packed, opened, today }) => shelfLife(item, { packed, opened: opened ?? null, today }),
})

export const storesCalculations = [stock, order, shelf]
