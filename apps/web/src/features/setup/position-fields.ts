import type { Offered, RegisterForm } from './register-form.ts'
import { choicesOf, seatWords } from './register-words.ts'

/** The form of a position. */
export function positionForm({ bearingTypes, kits, charts }: Offered): RegisterForm {
  return {
    noun: 'position',
    start: { seat: 'adapter-sleeve', shaftSystem: 'metric' },
    groups: [
      {
        fields: [
          { name: 'tag', label: 'Tag', kind: 'text', help: 'Unique at the site' },
          { name: 'name', label: 'Name', kind: 'text', help: 'Such as drive side' },
          {
            name: 'locating',
            label: 'Locating',
            kind: 'yes-no',
            yes: 'locating: holds the shaft',
            no: 'non-locating: lets it slide',
            help: 'Look at the shaft, not at the drawing of the other end (R-LOC)',
          },
          { name: 'bearingTypeId', label: 'Bearing type', kind: 'choice', choices: bearingTypes },
          { name: 'kitId', label: 'Kit', kind: 'choice', choices: kits, none: 'no kit yet' },
        ],
      },
      {
        title: 'Seat and housing',
        fields: [
          { name: 'seat', label: 'Seat', kind: 'choice', choices: choicesOf(seatWords) },
          {
            name: 'shaftSystem',
            label: 'Shaft',
            kind: 'choice',
            choices: [
              { value: 'metric', label: 'metric' },
              { value: 'inch', label: 'inch' },
            ],
            help: 'Metric and inch sleeves look alike; measure before you choose (R-INCH)',
          },
          { name: 'shaftDiameterMm', label: 'Shaft diameter', kind: 'number', unit: 'mm', optional: 'null' },
          { name: 'housingCode', label: 'Housing', kind: 'text', optional: 'null', help: 'Such as SN520' },
          {
            name: 'housingSeatWidthMm',
            label: 'Width of the housing seat',
            kind: 'number',
            unit: 'mm',
            optional: 'null',
            help: 'Measured; decides the locating rings (R-RING)',
          },
        ],
      },
      {
        title: 'Clearance band',
        text: 'By default mounts are judged by the generic guide. A chart of the bearing maker, or limits that the engineer sets for this position alone, come before it (R-RED).',
        fields: [
          { name: 'makerChartId', label: "Maker's chart", kind: 'choice', choices: charts, none: 'the generic guide' },
          { name: 'ownReductionMinUm', label: 'Own least reduction', kind: 'clearance', optional: 'null' },
          { name: 'ownReductionMaxUm', label: 'Own most reduction', kind: 'clearance', optional: 'null' },
          {
            name: 'ownResidualMinUm',
            label: 'Own least clearance left',
            kind: 'clearance',
            optional: 'null',
            help: 'After mounting (R-RES)',
          },
          { name: 'ownBandSource', label: 'Where these limits come from', kind: 'text', optional: 'null' },
        ],
      },
      {
        title: 'Out of use',
        fields: [
          {
            name: 'retiredAt',
            label: 'Retired',
            kind: 'since',
            on: 'This position is retired: it keeps its history and takes no more bearings',
          },
        ],
      },
    ],
  }
}
