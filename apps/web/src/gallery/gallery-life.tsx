import { CartesianGrid, Line, LineChart, XAxis, YAxis } from 'recharts'
import { formatCount } from '../lib/format-count.ts'
import { ChartFrame, chartLook } from '../ui/chart-frame.tsx'
import { LifeStrip } from '../ui/life-strip.tsx'
import type { LifeFitment } from '../ui/life-strip-geometry.ts'
import { GallerySection } from './gallery-section.tsx'

function every(days: number, from: string, to: string): string[] {
  const dates: string[] = []
  for (let at = Date.parse(from); at < Date.parse(to); at += days * 86_400_000) dates.push(new Date(at).toISOString())
  return dates
}

const fitments: LifeFitment[] = [
  {
    id: 'f1',
    bearing: '22220 K/C3',
    fittedOn: '2020-02-11',
    removedOn: '2021-09-03',
    end: 'failed',
    mode: 'Abrasive wear',
    verdict: 'under',
    runHours: 9240,
    greasedOn: every(41, '2020-03-20', '2021-08-20'),
  },
  {
    id: 'f2',
    bearing: '22220 K/C3',
    fittedOn: '2021-09-04',
    removedOn: '2021-10-19',
    end: 'failed',
    mode: 'Forced fracture',
    verdict: 'over',
    runHours: 760,
    greasedOn: ['2021-09-20'],
  },
  {
    id: 'f3',
    bearing: '22220 K/C3',
    fittedOn: '2021-10-20',
    removedOn: '2025-03-17',
    end: 'removed',
    verdict: 'inside',
    runHours: 19_880,
    runHoursEstimated: true,
    greasedOn: every(7, '2021-11-20', '2025-03-10'),
  },
  {
    id: 'f4',
    bearing: '22220 K/C3',
    fittedOn: '2025-03-17',
    verdict: 'not-proven',
    runHours: 6130,
    greasedOn: every(30, '2025-04-02', '2026-01-20'),
  },
]

const survival = [
  { hours: 0, share: 100 },
  { hours: 2000, share: 96 },
  { hours: 5000, share: 91 },
  { hours: 9000, share: 78 },
  { hours: 14_000, share: 60 },
  { hours: 20_000, share: 41 },
  { hours: 26_000, share: 22 },
]

export function GalleryLife() {
  return (
    <>
      <GallerySection title="Life strip">
        <LifeStrip fitments={fitments} today="2026-02-14" tag="BE-07 / DE" />
      </GallerySection>
      <GallerySection title="Life strip, nothing fitted">
        <LifeStrip fitments={[]} today="2026-02-14" tag="BE-08 / DE" />
      </GallerySection>
      <GallerySection title="Chart">
        <ChartFrame
          title="How long elevator bearings last"
          sentence="Half of them are still running after about 17 000 h; 22 of 100 reach 26 000 h."
          xTitle="Run hours, h"
          yTitle="Still running, %"
          columns={[
            { header: 'Run hours', unit: 'h', align: 'right', cell: (row) => row.hours },
            { header: 'Still running', unit: '%', align: 'right', cell: (row) => row.share },
          ]}
          rows={survival}
          rowKey={(row) => String(row.hours)}
        >
          <LineChart data={survival} {...chartLook.chart}>
            <CartesianGrid {...chartLook.grid} vertical={false} />
            <XAxis
              dataKey="hours"
              type="number"
              domain={[0, 28_000]}
              tickCount={8}
              tickFormatter={formatCount}
              {...chartLook.axis}
            />
            <YAxis width={40} domain={[0, 100]} {...chartLook.axis} />
            <Line type="stepAfter" dataKey="share" {...chartLook.line} />
          </LineChart>
        </ChartFrame>
      </GallerySection>
    </>
  )
}
