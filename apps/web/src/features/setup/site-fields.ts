import type { Choice, FieldGroup } from './form-spec.ts'

const acceptance: readonly Choice[] = [
  { value: 'simple', label: 'as read' },
  { value: 'proven', label: 'proven beyond the uncertainty' },
]

const zones: readonly Choice[] = Intl.supportedValuesOf('timeZone').map((zone) => ({ value: zone, label: zone }))

/** The site and the settings that its formulas go by, each with the rule that uses it. */
export const siteGroups: readonly FieldGroup[] = [
  {
    fields: [
      { name: 'name', label: 'Name', kind: 'text' },
      {
        name: 'timeZone',
        label: 'Time zone',
        kind: 'choice',
        choices: zones,
        help: 'Days of the plant begin and end by it',
      },
    ],
  },
  {
    title: 'Verdicts on mounts',
    text: 'A change counts for mounts that are signed from now on. Verdicts that stand keep the settings they were made with.',
    fields: [
      {
        name: 'coverageFactor',
        label: 'Coverage factor',
        kind: 'number',
        unit: '',
        help: 'How many standard uncertainties count as the uncertainty of a reading; 2 covers about 95 of 100 (R-U)',
      },
      {
        name: 'reductionAcceptance',
        label: 'A reduction is inside its band',
        kind: 'choice',
        choices: acceptance,
        help: 'Whether it is enough that the readings lie inside, or they have to lie inside by more than their uncertainty (R-U)',
      },
      {
        name: 'residualAcceptance',
        label: 'Enough clearance is left',
        kind: 'choice',
        choices: acceptance,
        help: 'The same for the least clearance after mounting (R-RES, R-U)',
      },
      {
        name: 'readingStandardUncertaintyUm',
        label: 'Standard uncertainty of one reading',
        kind: 'clearance',
        optional: 'null',
        help: 'From your own trials with the gauge; empty takes the usual one of feeler blades (R-U)',
      },
    ],
  },
  {
    title: 'Greasing',
    text: 'A change moves every due date within ten minutes; verdicts that are signed stay as they are.',
    fields: [
      {
        name: 'greasingWindowPercent',
        label: 'Window around the due day',
        kind: 'number',
        unit: '%',
        help: 'A greasing within this part of its interval, before or after, is in time; before it is named due soon (R-COMPL)',
      },
      {
        name: 'missedBeyondPercent',
        label: 'Missed after',
        kind: 'number',
        unit: '%',
        help: 'Later than this part of the interval, the interval counts as missed (R-COMPL)',
      },
      {
        name: 'minutesPerStop',
        label: 'Work at a stop',
        kind: 'number',
        unit: 'min',
        optional: 'null',
        help: 'With the way to it; the forecast of the coming weeks counts with it. Empty takes 10 min and says so',
      },
    ],
  },
]
