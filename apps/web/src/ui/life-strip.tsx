import { useElementSize } from '@mantine/hooks'
import { useState } from 'react'
import { LifeDetails } from './life-details.tsx'
import { LifeDrawing, lifeLayout } from './life-drawing.tsx'
import { endWords, LifeEndShape, lifeLegendEnds } from './life-end-mark.tsx'
import { lifeStripGeometry, type LifeBar, type LifeFitment } from './life-strip-geometry.ts'
import { LifeTable } from './life-table.tsx'
import { VerdictMark, verdictMeaning } from './verdict-mark.tsx'
import classes from './life-strip.module.css'

interface LifeStripProps {
  /** Oldest first. */
  fitments: readonly LifeFitment[]
  /** ISO date or instant that the strip ends at. */
  today: string
  /** Tag of the position, for the strip's name. */
  tag: string
  timeZone?: string
}

/** Room for the marks at both ends, px. */
const side = 10
const leastButtonWidth = 24

/** A position's whole life on one line of years: fitments as bars, greasings as ticks, verdict at the start, end mark at the end. */
export function LifeStrip({ fitments, today, tag, timeZone }: LifeStripProps) {
  const { ref, width } = useElementSize<HTMLDivElement>()
  const [chosenId, choose] = useState<string | null>(null)
  const chosen = fitments.find(({ id }) => id === chosenId) ?? fitments.at(-1)
  const strip = lifeStripGeometry(fitments, today, Math.max(1, width - 2 * side))

  if (fitments.length === 0) return <p className={classes.none}>No bearing was ever fitted at {tag}.</p>
  return (
    <section aria-label={`Life of ${tag}`}>
      <div ref={ref} className={classes.strip} style={{ height: lifeLayout.height }}>
        {width > 0 && (
          <>
            <LifeDrawing strip={strip} fitments={fitments} chosenId={chosen?.id} width={width} side={side} />
            {strip.bars.map((bar, index) => (
              <BarButton
                key={bar.id}
                bar={bar}
                name={nameOf(fitments[index]!, bar)}
                chosen={bar.id === chosen?.id}
                onChoose={() => choose(bar.id)}
              />
            ))}
          </>
        )}
      </div>
      {chosen && <LifeDetails fitment={chosen} today={today} timeZone={timeZone} />}

      <Legend greasings={strip.greasings} ticksDrawn={strip.ticksDrawn} />
      <details className={classes.more}>
        <summary>Fitments as a table</summary>
        <LifeTable fitments={fitments} timeZone={timeZone} tag={tag} />
      </details>
    </section>
  )
}

interface BarButtonProps {
  bar: LifeBar
  name: string
  chosen: boolean
  onChoose: () => void
}

/** The part of the strip that answers to finger, pointer and keyboard; narrow bars get a wider one, which lies on top. */
function BarButton({ bar, name, chosen, onChoose }: BarButtonProps) {
  const width = Math.max(leastButtonWidth, bar.width)
  const left = side + bar.x + (bar.width - width) / 2
  return (
    <button
      type="button"
      className={classes.bar}
      style={{ left: Math.max(0, left), width, zIndex: bar.width < leastButtonWidth ? 2 : 1 }}
      aria-label={name}
      aria-pressed={chosen}
      onClick={onChoose}
      onFocus={onChoose}
      onPointerEnter={(event) => event.pointerType === 'mouse' && onChoose()}
    />
  )
}

function nameOf(fitment: LifeFitment, bar: LifeBar): string {
  const parts = [
    fitment.bearing,
    `fitted ${fitment.fittedOn.slice(0, 10)}`,
    fitment.verdict ? verdictMeaning(fitment.verdict) : 'no verdict',
    fitment.removedOn ? `${endWords[fitment.end ?? 'lost']} ${fitment.removedOn.slice(0, 10)}` : 'still fitted',
    `${bar.greasings} greasings`,
  ]
  return parts.join(', ')
}

function Legend({ greasings, ticksDrawn }: { greasings: number; ticksDrawn: number }) {
  return (
    <ul className={classes.legend} aria-label="Legend">
      <li>
        Start:
        {(['inside', 'under', 'over', 'not-proven'] as const).map((verdict) => (
          <VerdictMark key={verdict} verdict={verdict} size="s" />
        ))}
      </li>
      <li>
        End:
        {lifeLegendEnds.map((end) => (
          <span key={end}>
            <svg viewBox="-8 -8 16 16" width="14" height="14" aria-hidden="true">
              <LifeEndShape end={end} />
            </svg>
            {endWords[end]}
          </span>
        ))}
      </li>
      <li>
        <svg viewBox="0 0 14 14" width="14" height="14" aria-hidden="true">
          <path d="M3 2v10M7 2v10M11 2v10" className={classes.tick} />
        </svg>
        {ticksDrawn < greasings
          ? `greasing; ${ticksDrawn} of ${greasings} drawn, the rest stand too close`
          : `greasing, ${greasings} drawn`}
      </li>
    </ul>
  )
}
