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
  const deviates = typed.found === 'other' || typed.found === 'missing'
  return (
    <li className={classes.kitLine}>
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
          outcome={answer.verdict === 'refused' ? 'fail' : 'warning'}
          name={line.kind}
          word={answer.verdict === 'refused' ? 'Does not go on' : 'Not as planned'}
        >
          {answer.sentence}
        </OutcomeLine>
      )}
      {deviates && (
        <div className={classes.kitMore}>
          {typed.found === 'other' && (
            <TextInput
              size="touch"
              label="Code on the part"
              value={typed.foundCode}
              autoComplete="off"
              onChange={(event) => change(withKitLine(sheet, line.id, { foundCode: event.currentTarget.value }))}
            />
          )}
          <TextInput
            size="touch"
            label={typed.found === 'other' ? 'Why is it taken?' : 'Why is it missing?'}
            value={typed.reason}
            error={faultOf(`kitCheck.${line.id}`) !== undefined && 'Give the reason'}
            autoComplete="off"
            onChange={(event) => change(withKitLine(sheet, line.id, { reason: event.currentTarget.value }))}
          />
        </div>
      )}
    </li>
  )
}
