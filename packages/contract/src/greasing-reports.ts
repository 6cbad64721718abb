import { z } from 'zod'
import { Day, Id, Instant, siteParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { everyone } from './roles.ts'
import { sitePath } from './site-path.ts'

/** Minutes of work that a stop is taken to need where the site says nothing. An assumption, and shown as one. */
export const assumedMinutesPerStop = 10

const Count = z.int().min(0)

export const ForecastWeek = z.object({
  startsOn: Day.meta({ description: 'A Monday; the first week is the running one' }),
  endsOn: Day,
  stops: Count,
  waiting: Count.meta({ description: 'Of them, those that were due before today' }),
  hours: z.number().min(0).meta({ description: 'Stops times minutes a stop, in h' }),
  grams: z.array(z.object({ greaseId: Id, grams: z.number() })),
})
export type ForecastWeek = z.infer<typeof ForecastWeek>

/** What the coming weeks ask for, if each work is done on its day and the machines run as they did. */
export const GreasingForecast = z
  .object({
    today: Day,
    weeks: z.array(ForecastWeek),
    greases: z.array(z.object({ id: Id, name: z.string(), grams: z.number() })),
    tasks: z.array(z.object({ task: z.string(), stops: Count })),
    minutesPerStop: z.number(),
    minutesAssumed: z.boolean().meta({ description: 'true: the site has not said how long a stop takes' }),
    estimatedStops: Count.meta({ description: 'Stops whose day follows from average hours a day' }),
  })
  .meta({ id: 'GreasingForecast' })
export type GreasingForecast = z.infer<typeof GreasingForecast>

export const forecastWeeks = [4, 8, 13] as const
export const readGreasingForecast = endpoint({
  name: 'read-greasing-forecast',
  method: 'GET',
  path: sitePath('greasing-forecast'),
  access: everyone,
  summary: 'Greasing work of the coming weeks: stops, hours and grams of each grease a week',
  params: siteParams,
  query: z.object({
    weeks: z.coerce
      .number()
      .pipe(z.literal([...forecastWeeks]))
      .default(8),
    areaId: Id.optional(),
  }),
  replies: { 200: GreasingForecast },
})

const tallyShape = {
  met: Count,
  early: Count.meta({ description: 'Before the window: opens the next interval, no window was due' }),
  late: Count,
  missed: Count.meta({ description: 'Greased, but so late that the interval counts as missed' }),
  wrongAmount: Count,
  notDone: Count.meta({ description: 'Intervals that passed with no greasing at all' }),
  windowsDue: Count,
  percent: z.number().nullable().meta({ description: 'Windows met over windows due; null: none was due. R-COMPL' }),
}
export const ComplianceTally = z.object(tallyShape)
export type ComplianceTally = z.infer<typeof ComplianceTally>

export const complianceGroupings = ['area', 'position', 'person', 'round'] as const
export const ComplianceGrouping = z.enum(complianceGroupings)
export type ComplianceGrouping = z.infer<typeof ComplianceGrouping>

export const GreasingCompliance = z
  .object({
    from: Day,
    to: Day,
    total: ComplianceTally,
    months: z.array(z.object({ month: Day.meta({ description: 'Its first day' }), ...tallyShape })),
    groups: z.array(
      z.object({
        id: Id.nullable().meta({ description: 'null: nobody greased, or on no round' }),
        name: z.string().nullable(),
        ...tallyShape,
      }),
    ),
    groupsInAll: Count.meta({ description: 'Of them the ones with the most windows not met are listed' }),
    overdosed: z.array(
      z.object({
        id: Id,
        positionId: Id,
        tag: z.string(),
        greasedAt: Instant,
        doseG: z.number(),
        plannedDoseG: z.number(),
        verdict: z.enum(['over', 'far-over']),
        signedBy: z.string(),
      }),
    ),
    overdosedInAll: Count,
  })
  .meta({ id: 'GreasingCompliance' })
export type GreasingCompliance = z.infer<typeof GreasingCompliance>

export const mostGroups = 50
export const mostOverdosed = 50
/** A longer period is asked for in several goes. */
export const longestPeriodDays = 1100

export const readGreasingCompliance = endpoint({
  name: 'read-greasing-compliance',
  method: 'GET',
  path: sitePath('greasing-compliance'),
  access: everyone,
  summary:
    'Windows met over windows due, by month and by area, position, person or round, and doses that were too large',
  params: siteParams,
  query: z.object({
    from: Day.optional().meta({ description: 'Else the first day of the month eleven months ago' }),
    to: Day.optional().meta({ description: 'Else today' }),
    by: ComplianceGrouping.default('area'),
    areaId: Id.optional(),
    positionId: Id.optional(),
    personId: Id.optional(),
    roundId: Id.optional(),
  }),
  replies: { 200: GreasingCompliance },
})
