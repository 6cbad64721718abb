import { Button } from '@mantine/core'
import { labelPaperFault, labelSheet } from '@shaftbook/contract/label-sheet'
import { printPositionLabels, type LabelPaper } from '@shaftbook/contract/papers'
import { useSearch } from '@tanstack/react-router'
import { useState } from 'react'
import { addressOf } from '../../api/call.ts'
import { readChoice, usualChoice, type LabelChoice } from '../../features/labels/label-choice.ts'
import { LabelForm } from '../../features/labels/label-form.tsx'
import { LabelPreview } from '../../features/labels/label-preview.tsx'
import { LabelledPositions } from '../../features/labels/labelled-positions.tsx'
import classes from '../../features/labels/labels.module.css'
import { useSearchChange } from '../../lib/use-search-change.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { PagePart } from '../../ui/page-part.tsx'
import { keptChoice, keepChoice } from './kept-choice.ts'
import type { LabelsSearch } from './labels-search.ts'

/** QR labels of positions: which, on what paper, from which label on. The paper is remembered in the address and the browser. */
export function LabelsPage() {
  const { code, site } = useSite()
  const search: LabelsSearch = useSearch({ strict: false })
  const change = useSearchChange()
  const [choice, setChoice] = useState<LabelChoice>(() => ({ ...usualChoice, ...keptChoice(), ...choiceIn(search) }))
  const [picked, setPicked] = useState<ReadonlySet<string>>(new Set())
  const [count, setCount] = useState<number | undefined>(undefined)
  const read = readChoice(choice)
  const fault = read.ok ? labelPaperFault(read.paper) : null
  const choose = (next: Partial<LabelChoice>): void => {
    const whole = { ...choice, ...next }
    setChoice(whole)
    keepChoice(whole)
    change(next)
  }
  const wanted = picked.size > 0 ? picked.size : count
  return (
    <>
      <PageHead
        title="Position labels"
        sentence={`A QR code on the machine leads to its position at ${site.siteName}.`}
        trail={[{ label: 'Positions', href: paths.positions(code) }]}
      />
      <div className={classes.columns}>
        <PagePart title="Positions">
          <LabelledPositions search={search} picked={picked} onPicked={setPicked} onCount={setCount} />
        </PagePart>
        <PagePart title="Paper">
          <div className={classes.form}>
            <LabelForm choice={choice} faults={read.ok ? {} : read.faults} onChange={choose} />
            {read.ok && fault === null && (
              <>
                <LabelPreview sheet={labelSheet(read.paper)} startAt={startOf(read.paper)} count={wanted} />
                <PrintLabels search={search} picked={picked} paper={read.paper} count={wanted} />
              </>
            )}
            {fault !== null && (
              <p className={classes.fault} role="alert">
                {fault}
              </p>
            )}
          </div>
        </PagePart>
      </div>
    </>
  )
}

interface PrintLabelsProps {
  search: LabelsSearch
  picked: ReadonlySet<string>
  paper: LabelPaper
  count: number | undefined
}

function PrintLabels({ search, picked, paper, count }: PrintLabelsProps) {
  const { code } = useSite()
  if (count === 0) return <p className={classes.soft}>No position is chosen.</p>
  const ids = picked.size > 0 ? [...picked].join(',') : search.position
  const filter = ids ? { ids } : { search: search.q, areaId: search.area, machineId: search.machine }
  const address = addressOf(printPositionLabels, { params: { site: code }, query: { ...filter, ...paper } })
  return (
    <Button component="a" href={address} target="_blank" rel="noopener">
      {count === 1 ? 'Print 1 label' : count === undefined ? 'Print the labels' : `Print ${count} labels`}
    </Button>
  )
}

function startOf(paper: LabelPaper): number {
  return paper.paper === 'a4' ? paper.startAt : 1
}

/** What the address says of the paper, as text of the fields. */
function choiceIn({ paper, q: _q, area: _area, machine: _machine, position: _position, ...fields }: LabelsSearch) {
  const given = Object.entries(fields).filter(([, value]) => value !== undefined)
  return {
    ...(paper && { paper }),
    ...Object.fromEntries(given.map(([name, value]) => [name, String(value)])),
  } satisfies Partial<LabelChoice>
}
