import type { LifeSummary } from '@shaftbook/contract/life'
import { Bar, BarChart, CartesianGrid, XAxis, YAxis } from 'recharts'
import { ChartFrame, chartLook, type ChartColumn } from '../../ui/chart-frame.tsx'
import { modesSentence, modeWords } from './life-words.ts'

type Mode = LifeSummary['byMode'][number]

const columns: readonly ChartColumn<Mode>[] = [
  { header: 'Failure mode', cell: modeWords },
  { header: 'Clause of ISO 15243', cell: (mode) => mode.modeClause ?? '–' },
  { header: 'Failures', cell: (mode) => mode.failures, align: 'right' },
]

const barHeight = 34
const axisHeight = 48

/** Failures by mode, the most frequent first. */
export function ModesChart({ summary }: { summary: LifeSummary }) {
  const bars = summary.byMode.map((mode) => ({ mode: modeWords(mode), failures: mode.failures }))
  return (
    <ChartFrame
      heading="h2"
      title="Failures by mode"
      sentence={modesSentence(summary)}
      xTitle="Failures, count"
      yTitle="Failure mode by ISO 15243"
      columns={columns}
      rows={summary.byMode}
      rowKey={(mode) => mode.modeClause ?? 'none'}
      height={bars.length * barHeight + axisHeight}
    >
      <BarChart {...chartLook.chart} data={bars} layout="vertical" barCategoryGap="28%">
        <CartesianGrid {...chartLook.grid} horizontal={false} />
        <XAxis {...chartLook.axis} type="number" allowDecimals={false} />
        <YAxis {...chartLook.axis} type="category" dataKey="mode" width={150} interval={0} tickLine={false} />
        <Bar dataKey="failures" fill="var(--accent)" isAnimationActive={false} maxBarSize={18} />
      </BarChart>
    </ChartFrame>
  )
}
