import { positionForm } from './position-fields.ts'
import type { Offered, RegisterForm } from './register-form.ts'
import type { RegisterName } from './registers.ts'
import {
  bearingKindWords,
  gaugeKindWords,
  attitudeWords,
  choicesOf,
  plainChoices,
  thickenerChoices,
} from './register-words.ts'

const taperChoices = plainChoices('1:12', '1:30')
const classChoices = plainChoices('C2', 'CN', 'C3', 'C4', 'C5')

const forms = {
  areas: (): RegisterForm => ({
    noun: 'area',
    start: {},
    groups: [
      {
        fields: [
          { name: 'code', label: 'Code', kind: 'text', help: 'Short, as on the drawings' },
          { name: 'name', label: 'Name', kind: 'text' },
          {
            name: 'walkingOrder',
            label: 'Place in walking order',
            kind: 'number',
            unit: '',
            whole: true,
            empty: 0,
            help: 'Lists and rounds go from small to large',
          },
        ],
      },
    ],
  }),
  machines: (): RegisterForm => ({
    noun: 'machine',
    start: { standby: false, hoursPerDay: 24 },
    groups: [
      {
        fields: [
          { name: 'tag', label: 'Tag', kind: 'text' },
          { name: 'name', label: 'Name', kind: 'text' },
          { name: 'kind', label: 'Kind', kind: 'text', help: 'Such as belt conveyor, fan, bucket elevator' },
          { name: 'standby', label: 'Use', kind: 'yes-no', yes: 'stands by', no: 'in regular use' },
          {
            name: 'hoursPerDay',
            label: 'Run hours a day, on average',
            kind: 'number',
            unit: 'h',
            help: 'Used where no meter tells; what follows from it is marked as estimated (R-CAL)',
          },
        ],
      },
    ],
  }),
  shafts: (): RegisterForm => ({
    noun: 'shaft',
    start: { attitude: 'horizontal', hollowBoreMm: 0 },
    groups: [
      {
        fields: [
          { name: 'code', label: 'Code', kind: 'text', help: 'Unique on the machine, such as HD' },
          { name: 'name', label: 'Name', kind: 'text', help: 'Such as head shaft' },
          { name: 'speedRpm', label: 'Speed', kind: 'number', unit: 'rev/min', optional: 'null' },
          {
            name: 'hollowBoreMm',
            label: 'Bore through the shaft',
            kind: 'number',
            unit: 'mm',
            empty: 0,
            help: '0 for a solid shaft',
          },
          { name: 'attitude', label: 'Attitude', kind: 'choice', choices: choicesOf(attitudeWords) },
        ],
      },
      {
        title: 'Locating',
        text: 'A shaft has exactly one locating position (R-LOC). Where another arrangement is meant, such as springs or a back-to-back pair, the reason stops the flag.',
        fields: [
          { name: 'locatingOverrideReason', label: 'Reason for none or several', kind: 'long-text', optional: 'null' },
        ],
      },
    ],
  }),
  meters: (): RegisterForm => ({
    noun: 'hour meter',
    start: { name: 'Hour meter' },
    groups: [
      {
        fields: [
          { name: 'name', label: 'Name', kind: 'text' },
          {
            name: 'rolloverAtHours',
            label: 'Starts again at',
            kind: 'number',
            unit: 'h',
            optional: 'null',
            help: 'Where the display turns over to zero, such as 99 999; empty if it never does',
          },
        ],
      },
    ],
  }),
  greases: (): RegisterForm => ({
    noun: 'grease',
    start: {},
    groups: [
      {
        fields: [
          { name: 'name', label: 'Name', kind: 'text' },
          {
            name: 'thickener',
            label: 'Thickener',
            kind: 'choice',
            choices: thickenerChoices,
            help: 'Decides what it may be mixed with (R-CHG)',
          },
          { name: 'nlgiGrade', label: 'NLGI grade', kind: 'text', help: 'Such as 2' },
          {
            name: 'baseOilViscosity40cMm2s',
            label: 'Base oil viscosity at 40 °C',
            kind: 'number',
            unit: 'mm²/s',
            optional: 'null',
          },
          { name: 'code', label: 'Code by DIN 51502', kind: 'text', optional: 'null', help: 'Such as KP2K-20' },
        ],
      },
    ],
  }),
  gauges: (): RegisterForm => ({
    noun: 'gauge',
    start: { kind: 'feeler-metric' },
    groups: [
      {
        fields: [
          { name: 'name', label: 'Name', kind: 'text', help: 'As it is marked, such as Feeler set 3' },
          { name: 'kind', label: 'Kind', kind: 'choice', choices: choicesOf(gaugeKindWords) },
          {
            name: 'checkedUntil',
            label: 'Checked until',
            kind: 'day',
            optional: 'null',
            help: 'Empty where the site keeps no date',
          },
          {
            name: 'bladesUm',
            label: 'Blades',
            kind: 'blades',
            kindField: 'kind',
            help: 'Typed or pasted in any order, with spaces between: in inches for inch blades, else in millimetres; a unit may stand behind each',
          },
          { name: 'note', label: 'Note', kind: 'long-text', optional: 'blank' },
        ],
      },
    ],
  }),
  'bearing-types': (): RegisterForm => ({
    noun: 'bearing type',
    start: { kind: 'spherical-roller', taper: '1:12', clearanceClass: 'CN', sealed: false },
    groups: [
      {
        fields: [
          { name: 'designation', label: 'Designation', kind: 'text', help: 'In full, such as 22220 K/C3' },
          { name: 'basicCode', label: 'Basic code', kind: 'text', help: 'Such as 22220' },
          { name: 'series', label: 'Series', kind: 'text', help: 'Such as 222' },
          { name: 'kind', label: 'Kind', kind: 'choice', choices: choicesOf(bearingKindWords) },
        ],
      },
      {
        title: 'Dimensions and class',
        fields: [
          { name: 'boreMm', label: 'Bore', kind: 'number', unit: 'mm' },
          { name: 'outsideDiameterMm', label: 'Outside diameter', kind: 'number', unit: 'mm' },
          { name: 'widthMm', label: 'Width', kind: 'number', unit: 'mm' },
          { name: 'taper', label: 'Bore taper', kind: 'choice', choices: taperChoices, none: 'cylindrical bore' },
          { name: 'clearanceClass', label: 'Clearance class', kind: 'choice', choices: classChoices },
          { name: 'sealed', label: 'Seals', kind: 'yes-no', yes: 'sealed', no: 'open' },
        ],
      },
      {
        title: "From the maker's data sheet",
        fields: [
          { name: 'massKg', label: 'Mass', kind: 'number', unit: 'kg', optional: 'null' },
          { name: 'dynamicLoadRatingKn', label: 'Dynamic load rating C', kind: 'number', unit: 'kN', optional: 'null' },
          { name: 'staticLoadRatingKn', label: 'Static load rating C0', kind: 'number', unit: 'kN', optional: 'null' },
        ],
      },
    ],
  }),
  positions: positionForm,
} as const satisfies Record<RegisterName, (offered: Offered) => RegisterForm>

/** The form of a register table. */
export function registerForm(name: RegisterName, offered: Offered): RegisterForm {
  return forms[name](offered)
}
