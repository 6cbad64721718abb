import { longColumns, type TableSpec } from './spec.ts'

const compatibilityColumns = [
  'lithium_12oh',
  'lithium_complex',
  'lithium_calcium',
  'calcium_hydrous',
  'calcium_anhydrous',
  'calcium_complex',
  'calcium_sulfonate',
  'aluminium_complex',
  'sodium',
  'barium_complex',
  'clay',
  'polyurea_conventional',
  'polyurea_shear_stable',
  'ptfe_pfpe',
]

function camel(snake: string): string {
  return snake.replace(/_(\w)/g, (_, letter: string) => letter.toUpperCase())
}

export const greaseAndLifeTables: TableSpec[] = [
  {
    csv: 'iso15243_failure_modes',
    file: 'failure-modes',
    rowType: 'FailureModeRow',
    constant: 'failureModesTable',
    title: 'Failure modes of rolling bearings',
    standard: 'ISO 15243',
    edition: '2017',
    fields: {
      clause: 'clause',
      parent_clause: 'parentClause',
      term: 'term',
      level: 'level',
      description: 'description',
      usual_root_causes: 'usualCauses',
      what_the_mechanic_sees: 'signs',
      edition: 'editionNote',
    },
    text: ['clause', 'parentClause'],
    derive: () => ({ certainty: 'high' }),
  },
  {
    csv: 'grease_classes',
    file: 'grease-classes',
    rowType: 'GreaseClassRow',
    constant: 'greaseClassesTable',
    title: 'Grease grades, codes and thickener families',
    standard: 'ASTM D217, DIN 51825 / 51502, ISO 6743-9 / ISO 12924, ISO 3448',
    edition: null,
    fields: { section: 'section', ...longColumns },
    text: ['key'],
  },
  {
    csv: 'grease_compatibility',
    file: 'grease-compatibility',
    rowType: 'GreaseCompatibilityRow',
    constant: 'greaseCompatibilityTable',
    title: 'Compatibility of grease thickeners, worst published rating',
    standard: 'no standard (test: ASTM D6185)',
    edition: null,
    fields: {
      thickener: 'thickener',
      ...Object.fromEntries(compatibilityColumns.map((name) => [name, camel(name)])),
    },
    derive: () => ({ certainty: 'low' }),
  },
  {
    csv: 'iso281_tables',
    file: 'rating-life',
    rowType: 'RatingLifeRow',
    constant: 'ratingLifeTable',
    title: 'Factors of the modified rating life',
    standard: 'ISO 281',
    edition: '2007',
    fields: { table: 'table', ...longColumns },
    text: ['key'],
  },
]
