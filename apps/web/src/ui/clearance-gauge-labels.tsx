import type { GaugeGeometry, GaugeInput } from './clearance-gauge-geometry.ts'
import { spreadLabels } from './spread-labels.ts'
import classes from './clearance-gauge.module.css'

interface GaugeLabel {
  key: 'bench' | 'windowTop' | 'windowBottom' | 'residual' | 'mean' | 'aim'
  y: number
  word: string
  value: string
}

/** The labels right of the gauge, from high to low, each at the height of its line. */
export function gaugeLabels(g: GaugeGeometry, input: GaugeInput, digits: (um: number) => string): GaugeLabel[] {
  const labels: (GaugeLabel | null)[] = [
    g.bench && { key: 'bench', y: g.bench.y, word: 'Bench', value: digits(input.benchUm!) },
    g.window && { key: 'windowTop', y: g.window.topY, word: 'Window from', value: digits(g.window.topUm) },
    g.window && { key: 'windowBottom', y: g.window.bottomY, word: 'to', value: digits(g.window.bottomUm) },
    g.aim && { key: 'aim', y: g.aim.y, word: 'Aim', value: digits(g.aim.um) },
    g.residual && { key: 'residual', y: g.residual.y, word: 'Residual min', value: digits(input.residualMinUm!) },
    g.mean && { key: 'mean', y: g.mean.y, word: g.mean.off ? 'Mean, off scale' : 'Mean', value: digits(input.meanUm!) },
  ]
  return labels.filter((label) => label !== null).sort((a, b) => a.y - b.y)
}

export function GaugeLabels({ labels, geometry: g }: { labels: GaugeLabel[]; geometry: GaugeGeometry }) {
  const ys = spreadLabels(
    labels.map(({ y }) => y),
    19,
    g.top,
    g.bottom,
  )
  const left = g.plotRight + 14
  return (
    <g className={classes.labels}>
      {labels.map((label, index) => (
        <g key={label.key} data-label={label.key}>
          <path d={`M${g.plotRight + 1} ${label.y}L${left - 4} ${ys[index]}`} />
          <text x={left} y={ys[index]} dominantBaseline="central">
            {label.word}{' '}
            <tspan className={classes.value} data-label={label.key}>
              {label.value}
            </tspan>
          </text>
        </g>
      ))}
    </g>
  )
}
