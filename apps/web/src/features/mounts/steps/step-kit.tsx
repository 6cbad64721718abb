import { Button, TextInput } from '@mantine/core'
import type { KitLine } from '@shaftbook/contract/kits'
import { useState } from 'react'
import { lineFor, lineOfCode, withKitLine, type CodeKey } from '../kit-check.ts'
import { KitLineRow } from '../kit-line-row.tsx'
import { useSheet } from '../sheet-context.ts'
import { SheetText } from '../sheet-fields.tsx'
import { useSlots } from '../sheet-slots.ts'
import { StepPart } from '../step-part.tsx'
import classes from '../sheet.module.css'

/** What lies on the bench against the kit of the position: scanned, typed or tapped. */
export function StepKit() {
  const { place, scope } = useSheet()
  const { kit } = place
  const codes: readonly { at: CodeKey; label: string; when: boolean }[] = [
    { at: 'sleeveCode', label: 'Sleeve', when: scope.sleeve },
    { at: 'nutCode', label: 'Nut', when: scope.nut },
    { at: 'lockingCode', label: 'Washer or clip, new', when: scope.nut },
  ]
  const typed = codes.filter(({ at, when }) => when && !lineFor(kit, at))
  return (
    <>
      {kit && scope.kit && <KitOnBench kit={kit} />}
      {!scope.kit && <p className={classes.hint}>No kit stands at this position: enter what goes on.</p>}
      {typed.length > 0 && (
        <StepPart
          title={scope.kit ? 'Not in the kit' : 'Parts'}
          hint="Read the code from the part, not from the drawing."
        >
          {typed.map(({ at, label }) => (
            <SheetText key={at} at={at} label={label} />
          ))}
        </StepPart>
      )}
    </>
  )
}

function KitOnBench({ kit }: { kit: NonNullable<ReturnType<typeof useSheet>['place']['kit']> }) {
  const { sheet, change, scope } = useSheet()
  const [stray, setStray] = useState<string | null>(null)
  const [taken, setTaken] = useState<string | null>(null)
  const open = kit.lines.filter(({ id }) => (sheet.kitCheck[id]?.found ?? '') === '')
  const take = (code: string): void => {
    const line = lineOfCode(kit, code)
    setStray(line ? null : code)
    setTaken(line?.designation ?? null)
    if (line) change(withKitLine(sheet, line.id, { found: 'as-planned', foundCode: '', reason: '' }))
  }
  return (
    <>
      {scope.purpose !== 'correction' && <CodeEntry onCode={take} />}
      <output className={classes.hint}>
        {taken !== null && `${taken} is here. `}
        {taken !== null && (open.length === 0 ? 'Every line is told.' : `${open.length} to go.`)}
      </output>
      {stray !== null && (
        <StrayCode
          code={stray}
          lines={open.length > 0 ? open : kit.lines}
          onLine={(line) => {
            setStray(null)
            change(withKitLine(sheet, line.id, { found: 'other', foundCode: stray }))
          }}
          onDrop={() => setStray(null)}
        />
      )}
      <ol className={classes.kitLines} aria-label={`Kit ${kit.name}`}>
        {kit.lines.map((line) => (
          <KitLineRow key={line.id} line={line} />
        ))}
      </ol>
    </>
  )
}

/** A handheld scanner types here and presses Enter; so may a person. */
function CodeEntry({ onCode }: { onCode: (code: string) => void }) {
  const [code, setCode] = useState('')
  const [camera, setCamera] = useState(false)
  const { scanner } = useSlots()
  const take = (): void => {
    if (code.trim() === '') return
    onCode(code.trim())
    setCode('')
  }
  return (
    <div className={classes.scan}>
      <TextInput
        size="touch"
        label="Scan or type a code"
        description="Or tap what lies on the bench, line by line"
        value={code}
        autoComplete="off"
        enterKeyHint="done"
        data-own-enter
        onChange={(event) => setCode(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take()
        }}
        rightSection={
          <Button variant="subtle" onClick={take} disabled={code.trim() === ''}>
            Take
          </Button>
        }
        rightSectionWidth={88}
      />
      {scanner && (
        <Button variant="default" size="touch" aria-expanded={camera} onClick={() => setCamera(!camera)}>
          {camera ? 'Close the camera' : 'Read codes with the camera'}
        </Button>
      )}
      {camera && scanner?.(onCode)}
    </div>
  )
}

interface StrayCodeProps {
  code: string
  lines: readonly KitLine[]
  onLine: (line: KitLine) => void
  onDrop: () => void
}

/** A code that no line has: does it stand for one of them, or has it nothing to do with this mount? */
function StrayCode({ code, lines, onLine, onDrop }: StrayCodeProps) {
  return (
    <div className={classes.question} role="alert">
      <p>
        <strong>{code}</strong> is in no line of this kit. Is it meant to stand for one?
      </p>
      <div className={classes.answers}>
        {lines.map((line) => (
          <Button key={line.id} variant="default" size="touch" onClick={() => onLine(line)}>
            For {line.designation}
          </Button>
        ))}
        <Button variant="outline" size="touch" onClick={onDrop}>
          It does not belong here
        </Button>
      </div>
    </div>
  )
}
