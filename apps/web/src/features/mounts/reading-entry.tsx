import { Button, TextInput } from '@mantine/core'
import { lengthUnits } from '../../lib/length-units.ts'
import { QuestionedReading } from './questioned-reading.tsx'
import { useSheet } from './sheet-context.ts'
import { isOpenQuestion, ownQuestion, serviceQuestion, type ReadReading } from './sheet-readings.ts'
import { emptyPair, type Moment, type TypedReading } from './sheet.ts'
import classes from './sheet.module.css'

const momentWords: Record<Moment, string> = { found: 'As found', bench: 'Bench', mounted: 'Mounted' }

/** The readings of one moment, row A beside row B, with room for more. */
export function ReadingEntry({ moment }: { moment: Moment }) {
  const { sheet, change, judged, faultOf, suggestionsOf } = useSheet()
  const pairs = sheet[moment]
  const symbol = lengthUnits[sheet.unit].symbol
  const put = (at: number, row: 'A' | 'B', reading: TypedReading): void =>
    change({ [moment]: pairs.map((pair, index) => (index === at ? { ...pair, [row]: reading } : pair)) })
  const readingAt = (key: string): ReadReading | undefined => judged.readings.find((reading) => reading.key === key)

  return (
    <fieldset className={classes.readings}>
      <legend className="visually-hidden">
        {momentWords[moment]} clearance readings in {lengthUnits[sheet.unit].name}
      </legend>
      <div className={classes.readingHead} aria-hidden="true">
        <span>Row A</span>
        <span>Row B</span>
      </div>
      {pairs.map((pair, at) => (
        <div key={at}>
          <div className={classes.readingPair}>
            {(['A', 'B'] as const).map((row) => (
              <ReadingField
                key={row}
                label={`${momentWords[moment]}, row ${row}, reading ${at + 1}`}
                fieldKey={`${moment}.${at}.${row}`}
                typed={pair[row]}
                symbol={symbol}
                read={readingAt(`${moment}.${at}.${row}`)}
                onType={(text) => put(at, row, { text, meant: false })}
              />
            ))}
          </div>
          {(['A', 'B'] as const).map((row) => {
            const key = `${moment}.${at}.${row}`
            const read = readingAt(key)
            const asked = serviceQuestion(faultOf(key), suggestionsOf(key), sheet.unit)
            const question = read && (asked ?? ownQuestion(read, sheet.unit))
            return (
              question && (
                <QuestionedReading
                  key={row}
                  row={row}
                  text={read.text}
                  unit={sheet.unit}
                  question={question}
                  answered={read.meant && !asked}
                  onText={(text) => put(at, row, { text, meant: false })}
                  onMeant={(meant) => put(at, row, { text: pair[row].text, meant })}
                />
              )
            )
          })}
        </div>
      ))}
      <Button variant="default" size="touch" onClick={() => change({ [moment]: [...pairs, emptyPair()] })}>
        Add a reading in both rows
      </Button>
    </fieldset>
  )
}

interface ReadingFieldProps {
  label: string
  fieldKey: string
  typed: TypedReading
  symbol: string
  read: ReadReading | undefined
  onType: (text: string) => void
}

function ReadingField({ label, fieldKey, typed, symbol, read, onType }: ReadingFieldProps) {
  const { faultOf, suggestionsOf } = useSheet()
  const asked = (suggestionsOf(fieldKey) ?? []).length > 0
  const refused = read?.answer.kind === 'refused' ? read.answer.sentence : undefined
  const open = read !== undefined && isOpenQuestion(read)
  return (
    <TextInput
      aria-label={label}
      size="touch"
      value={typed.text}
      error={asked || (faultOf(fieldKey) ?? refused ?? open)}
      onChange={(event) => onType(event.currentTarget.value)}
      inputMode="decimal"
      autoComplete="off"
      enterKeyHint="next"
      rightSection={<span className={classes.readingUnit}>{symbol}</span>}
      rightSectionWidth={46}
      rightSectionPointerEvents="none"
      classNames={{ input: classes.readingInput }}
    />
  )
}
