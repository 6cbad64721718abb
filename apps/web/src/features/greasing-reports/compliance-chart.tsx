import type { GreasingCompliance } from '@shaftbook/contract/greasing-reports'
import { Bar, BarChart, CartesianGrid, XAxis, YAxis } from 'recharts'
import { ChartFrame, chartLook, type ChartColumn } from '../../ui/chart-frame.tsx'
import { ChartKey } from './chart-key.tsx'
import { complianceSentence, monthWords, percentText, resultSeries } from './compliance-words.ts'
import classes from './reports.module.css'

type Month = GreasingCompliance['months'][number]

const columns: readonly ChartColumn<Month>[] = [
  { header: 'Month', cell: ({ month }) => monthWords(month) },
  { header: 'Met', cell: percentText, align: 'right' },
  { header: 'Windows due', cell: ({ windowsDue }) => windowsDue, align: 'right' },
  ...resultSeries.map(({ key, words }) => ({
    header: words,
    cell: (month: Month) => month[key],
    align: 'right' as const,
  })),
  { header: 'Early, no window due', cell: ({ early }) => early, align: 'right' },
]

/** The windows that were due in each month, by what they came to. */
export function ComplianceChart({ compliance }: { compliance: GreasingCompliance }) {
  return (
    <div className={classes.chart}>
      <ChartFrame
        heading="h2"
        title="Windows by month"
        sentence={complianceSentence(compliance)}
        xTitle="Month"
        yTitle="Windows due, count"
        columns={columns}
        rows={compliance.months}
        rowKey={({ month }) => month}
        legend={<ChartKey entries={resultSeries} />}
      >
        <BarChart {...chartLook.chart} data={compliance.months}>
          <CartesianGrid {...chartLook.grid} vertical={false} />
          <XAxis {...chartLook.axis} dataKey="month" tickFormatter={monthWords} minTickGap={12} />
          <YAxis {...chartLook.axis} width={44} allowDecimals={false} />
          {resultSeries.map(({ key, fill }) => (
            <Bar
              key={key}
              dataKey={key}
              stackId="windows"
              fill={fill}
              stroke="var(--ground)"
              isAnimationActive={false}
              maxBarSize={36}
            />
          ))}
        </BarChart>
      </ChartFrame>
    </div>
  )
}
