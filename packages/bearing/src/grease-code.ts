import { greaseClassRows } from '@shaftbook/standards/grease-classes'
import { greaseClassesTable } from '@shaftbook/standards/grease-classes.data'
import { InputError } from './input-error.ts'
import type { Sourced } from './source.ts'

export interface GreaseCode extends Sourced {
  use: string
  additive: string | null
  baseOil: string
  nlgi: string
  maxC: number | string
  minC: number
  water: string
}

/** Decodes a grease code of DIN 51502, such as KP2K-20: use, additives, base oil, NLGI grade, temperatures, water. */
export function decodeGrease(text: string, field = 'grease code'): GreaseCode {
  const code = text.trim().toUpperCase().replace(/\s+/g, '').replace(/−/g, '-')
  const match = /^(OG|K|G|M)(PF|P|F)?(HC|FK|PH|PG|SI|E|X)?(000|00|[0-6])([C-HKMNPRSTU])(-[1-6]0)$/.exec(code)
  if (!match) throw new InputError('malformed', field, `"${text}" is not a grease code such as KP2K-20.`)
  const [, use = '', additive, oil, nlgi = '', upper = '', lower = ''] = match
  return {
    use: meaning('din51825_pos1_type', use),
    additive: additive === undefined ? null : meaning('din51825_pos2_additive', additive),
    baseOil: meaning('din51825_pos3_base_oil', oil ?? '(none)'),
    nlgi,
    maxC: value('din51825_upper_temperature', upper, 'max_temperature'),
    minC: Number(lower),
    water: meaning('din51825_upper_temperature', upper, 'water_resistance_DIN51807_1'),
    source: {
      kind: 'standard',
      title: 'DIN 51502 / DIN 51825',
      edition: greaseClassesTable.edition,
      row: code,
      certainty: 'high',
    },
    rule: 'DIN 51502',
    cautions: /[GH]/.test(upper)
      ? ['For G and H the temperature of the water test differs between lists (40 or 90 °C).']
      : [],
  }
}

function meaning(section: string, key: string, attribute = 'meaning'): string {
  return String(value(section, key, attribute))
}

function value(section: string, key: string, attribute: string): string | number {
  const row = greaseClassRows(section, key).find((candidate) => candidate.attribute === attribute)
  if (!row) throw new InputError('malformed', 'grease code', `The table of grease codes has no ${key} in ${section}.`)
  return row.value
}
