import type { ForecastWeek, GreasingForecast } from '@shaftbook/contract/greasing-reports'
import { Bar, BarChart, CartesianGrid, XAxis, YAxis } from 'recharts'
import { formatCount } from '../../lib/format-count.ts'
import { formatDay } from '../../lib/format-day.ts'
import { ChartFrame, chartLook, type ChartColumn } from '../../ui/chart-frame.tsx'
import { ChartKey } from './chart-key.tsx'
import { greaseSentence, greaseSeries, hourText, workSentence } from './forecast-words.ts'
import classes from './reports.module.css'

const waitingFill = 'var(--over)'
const weekTitle = 'Week from Monday, day and month'

/** "24 Nov" of a day. */
function shortDay(day: string): string {
  return formatDay(day).replace(/ \d{4}$/, '')
}

const workColumns: readonly ChartColumn<ForecastWeek>[] = [
  { header: 'Week from', cell: ({ startsOn }) => formatDay(startsOn) },
  { header: 'Stops', cell: ({ stops }) => formatCount(stops), align: 'right' },
  { header: 'Due before today', cell: ({ waiting }) => formatCount(waiting), align: 'right' },
  { header: 'Work', unit: 'h', cell: ({ hours }) => hourText(hours), align: 'right' },
]

/** Hours of work and grams of each grease, week by week. */
export function ForecastCharts({ forecast }: { forecast: GreasingForecast }) {
  return (
    <div className={classes.charts}>
      <WorkChart forecast={forecast} />
      {forecast.greases.length > 0 && <GreaseChart forecast={forecast} />}
    </div>
  )
}

function WorkChart({ forecast }: { forecast: GreasingForecast }) {
  const perStop = forecast.minutesPerStop / 60
  const bars = forecast.weeks.map(({ startsOn, stops, waiting }) => ({
    week: shortDay(startsOn),
    waiting: waiting * perStop,
    due: (stops - waiting) * perStop,
  }))
  return (
    <ChartFrame
      heading="h2"
      title="Work"
      sentence={workSentence(forecast)}
      xTitle={weekTitle}
      yTitle="Work, h"
      columns={workColumns}
      rows={forecast.weeks}
      rowKey={({ startsOn }) => startsOn}
      legend={
        <ChartKey
          entries={[
            { fill: 'var(--accent)', words: 'falls due in the week' },
            { fill: waitingFill, words: 'was due before today' },
          ]}
        />
      }
    >
      <BarChart {...chartLook.chart} data={bars}>
        <CartesianGrid {...chartLook.grid} vertical={false} />
        <XAxis {...chartLook.axis} dataKey="week" minTickGap={8} interval="preserveStart" />
        <YAxis {...chartLook.axis} width={44} domain={[0, wholeHours]} />
        <Bar dataKey="waiting" stackId="work" fill={waitingFill} isAnimationActive={false} maxBarSize={36} />
        <Bar dataKey="due" stackId="work" fill="var(--accent)" isAnimationActive={false} maxBarSize={36} />
      </BarChart>
    </ChartFrame>
  )
}

function GreaseChart({ forecast }: { forecast: GreasingForecast }) {
  const series = greaseSeries(forecast)
  const bars = forecast.weeks.map((week) => ({
    week: shortDay(week.startsOn),
    ...Object.fromEntries(series.map(({ key, gramsOf }) => [key, gramsOf(week)])),
  }))
  const columns: readonly ChartColumn<ForecastWeek>[] = [
    { header: 'Week from', cell: ({ startsOn }) => formatDay(startsOn) },
    ...forecast.greases.map(({ id, name }) => ({
      header: name,
      unit: 'g',
      cell: ({ grams }: ForecastWeek) => formatCount(grams.find(({ greaseId }) => greaseId === id)?.grams ?? 0),
      align: 'right' as const,
    })),
  ]
  return (
    <ChartFrame
      heading="h2"
      title="Grease"
      sentence={greaseSentence(forecast)}
      xTitle={weekTitle}
      yTitle="Grease, g"
      columns={columns}
      rows={forecast.weeks}
      rowKey={({ startsOn }) => startsOn}
      legend={<ChartKey entries={series.map(({ name }, index) => ({ fill: greaseFill(index), words: name }))} />}
    >
      <BarChart {...chartLook.chart} data={bars}>
        <CartesianGrid {...chartLook.grid} vertical={false} />
        <XAxis {...chartLook.axis} dataKey="week" minTickGap={8} interval="preserveStart" />
        <YAxis {...chartLook.axis} width={56} />
        {series.map(({ key }, index) => (
          <Bar
            key={key}
            dataKey={key}
            stackId="grease"
            fill={greaseFill(index)}
            stroke="var(--panel)"
            isAnimationActive={false}
            maxBarSize={36}
          />
        ))}
      </BarChart>
    </ChartFrame>
  )
}

/** The axis ends at a whole hour, so that little work has no axis of odd fractions. */
function wholeHours(most: number): number {
  return Math.max(1, Math.ceil(most))
}

const fills = ['var(--accent)', 'var(--not-proven)', 'var(--rule-strong)', 'var(--under)', 'var(--ink-soft)'] as const

function greaseFill(index: number): string {
  return fills[index % fills.length] ?? fills[0]
}
