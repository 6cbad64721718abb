import { useSuspenseQuery } from '@tanstack/react-query'
import { useSite } from '../../../session/site-access.tsx'
import { greasesQuery } from '../mount-queries.ts'
import { useSheet } from '../sheet-context.ts'
import { SheetNumber, SheetSelect } from '../sheet-fields.tsx'
import { firstFillOf } from '../sheet-fill.ts'
import { AskLine } from '../step-part.tsx'
import { WorkCaution } from '../work-caution.tsx'
import classes from '../sheet.module.css'

/** The first fill: the bearing full, the housing by its share. R-FILL. */
export function StepGrease() {
  const { sheet, type, place } = useSheet()
  const { code } = useSite()
  const { data: greases } = useSuspenseQuery(greasesQuery(code))
  const fill = firstFillOf(type)
  const planned = place.plan
  const plannedName = greases.items.find(({ id }) => id === planned?.greaseId)?.name
  const other = planned !== null && sheet.greaseId !== '' && sheet.greaseId !== planned.greaseId
  return (
    <>
      <WorkCaution title="A housing filled to the top runs hot">
        Leave the outlet free and watch the temperature in the first hour. Keep dust and chips out of the grease.
      </WorkCaution>
      <div className={classes.fields}>
        <SheetSelect
          at="greaseId"
          label="Grease"
          description={plannedName && `Planned here: ${plannedName}`}
          options={[
            { value: '', label: 'Not entered' },
            ...greases.items.map(({ id, name }) => ({ value: id, label: name })),
          ]}
        />
        {other && (
          <AskLine>
            This is not the grease of the plan{plannedName && `, ${plannedName}`}. Two greases that do not go together
            ruin each other: is it meant, and was the housing cleaned? Ask the engineer before you fill.
          </AskLine>
        )}
        <SheetNumber
          at="greaseBearingG"
          label="In the bearing"
          description={fill === null ? 'All of its free space' : `All of its free space: about ${fill} g`}
        />
        <SheetNumber
          at="greaseHousingG"
          label="In the housing"
          description="20 to 40 % of its free space; 40 to 60 % where it turns slowly or in dust"
        />
      </div>
    </>
  )
}
