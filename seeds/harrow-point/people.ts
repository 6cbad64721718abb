import type { Role } from '@shaftbook/contract/roles'
import type { MountOutcome } from './truth.ts'

export interface DemoPerson {
  name: string
  email: string
  password: string
  role: Role
}

/** Invented people. Their passwords are for the demo only. */
export const manager = person('Ines Hallam', 'manager', 'all-in-order-2')
export const engineer = person('Tomas Wren', 'engineer', 'inside-the-band-2')
export const storekeeper = person('Bea Lindgard', 'stores', 'shelf-and-bin-2')
export const carefulTechnician = person('Mara Voss', 'technician', 'feeler-blade-2')
export const usualTechnician = person('Jonas Pell', 'technician', 'grease-and-go-2')

/** Works at Sallow Quay only. */
export const quayPerson: DemoPerson = {
  name: 'Oskar Lundry',
  email: 'oskar@sallow-quay.example',
  password: 'small-quay-2',
  role: 'technician',
}

export interface Crew {
  fitter: string
  checker: string | null
  signer: 'careful' | 'usual'
  readingsPerRow: number
  unit: 'mm' | 'um'
  comma: boolean
  gauge: string
  /** How often a mount ends up in each way. */
  outcomes: readonly (readonly [Exclude<MountOutcome, 'unjudged'>, number])[]
  share: number
}

/** Who fits bearings, with how much care. */
export const crews: readonly Crew[] = [
  {
    fitter: 'Mara Voss',
    checker: 'Tomas Wren',
    signer: 'careful',
    readingsPerRow: 3,
    unit: 'mm',
    comma: false,
    gauge: 'Feeler set 2, 0.02 to 0.30 mm',
    outcomes: [
      ['good', 94],
      ['under', 3],
      ['over', 2],
      ['thin', 1],
    ],
    share: 4,
  },
  {
    fitter: 'Jonas Pell',
    checker: null,
    signer: 'usual',
    readingsPerRow: 2,
    unit: 'mm',
    comma: true,
    gauge: 'Feeler set 1, 0.03 to 0.30 mm',
    outcomes: [
      ['good', 84],
      ['under', 8],
      ['over', 6],
      ['thin', 2],
    ],
    share: 4,
  },
  {
    fitter: 'Dag Brackley, for the contractor',
    checker: null,
    signer: 'usual',
    readingsPerRow: 2,
    unit: 'um',
    comma: false,
    gauge: 'The contractor’s feelers',
    outcomes: [
      ['good', 66],
      ['under', 12],
      ['over', 18],
      ['thin', 4],
    ],
    share: 2,
  },
]

function person(name: string, role: Role, password: string): DemoPerson {
  const [first = ''] = name.toLowerCase().split(' ')
  return { name, email: `${first}@harrow-point.example`, password, role }
}
