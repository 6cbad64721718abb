import { TextInput } from '@mantine/core'
import type { KitLine } from '@shaftbook/contract/kits'
import type { KitCheckLine } from '@shaftbook/contract/mount-details'
import { useId } from 'react'
import { withKitLine } from './kit-check.ts'
import { OutcomeLine } from './outcome-line.tsx'
import { useSheet } from './sheet-context.ts'
import { emptyKitLine } from './sheet.ts'
import classes from './sheet.module.css'

type Found = KitCheckLine['found']

/** One line of the kit, and what of it lies on the bench. */
export function KitLineRow({ line }: { line: KitLine }) {
  const { sheet, change, faultOf, kitAnswers } = useSheet()
  const nameId = useId()
  const typed = sheet.kitCheck[line.id] ?? emptyKitLine()
  const choices: readonly [Found, string][] = [
    ['as-planned', 'It is here'],
    ['other', 'Another'],
    line.need === 'must' ? ['missing', 'Missing'] : ['not-needed', 'Not needed'],
  ]
  const answer = kitAnswers.get(line.id)
  const fault = faultOf(`kitCheck.${line.id}`)
  const refused = answer?.verdict === 'refused'
  // a part that never goes on is not argued for
  const reasoned = (typed.found === 'other' && !refused) || typed.found === 'missing'
  return (
    <li className={classes.kitLine} {...(fault !== undefined && { 'data-failed': true, tabIndex: -1 })}>
      <p id={nameId} className={classes.kitName}>
        <strong>{line.designation}</strong>
        <span>
          {line.kind}, {line.quantity} {line.unit}
          {line.need === 'may' && ', if needed'}
        </span>
      </p>
      <div className={classes.kitChoices} role="radiogroup" aria-labelledby={nameId}>
        {choices.map(([found, word]) => (
          <label key={found} className={classes.kitChoice} data-tone={found}>
            <input
              type="radio"
              name={`kit-${line.id}`}
              checked={typed.found === found}
              onChange={() => change(withKitLine(sheet, line.id, { found }))}
            />
            <span>{word}</span>
          </label>
        ))}
      </div>
      {answer && answer.verdict !== 'ok' && (
        <OutcomeLine
          outcome={refused ? 'fail' : 'warning'}
          name={line.kind.charAt(0).toUpperCase() + line.kind.slice(1)}
          word={refused ? 'Does not go on' : 'Not as planned'}
        >
          {answer.sentence}
        </OutcomeLine>
      )}
      {(typed.found === 'other' || reasoned) && (
        <div className={classes.kitMore}>
          {typed.found === 'other' && (
            <TextInput
              size="touch"
              label="Code on the part"
              value={typed.foundCode}
              error={refused && fault !== undefined && 'Fit another part and enter its code'}
              autoComplete="off"
              onChange={(event) => change(withKitLine(sheet, line.id, { foundCode: event.currentTarget.value }))}
            />
          )}
          {reasoned && (
            <TextInput
              size="touch"
              label={typed.found === 'other' ? 'Why is it taken?' : 'Why is it missing?'}
              value={typed.reason}
              error={fault !== undefined && 'Give the reason'}
              autoComplete="off"
              onChange={(event) => change(withKitLine(sheet, line.id, { reason: event.currentTarget.value }))}
            />
          )}
        </div>
      )}
    </li>
  )
}
