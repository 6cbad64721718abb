import { areaSpecs } from './layout.ts'
import { machineSpecs } from './machines.ts'
import { carefulTechnician, engineer, manager, quayPerson, storekeeper, usualTechnician } from './people.ts'
import { harrowPointWays, noOtherWays } from './other-ways.ts'
import { harrowPointWork, noPlannedWork } from './planned-work.ts'
import type { Terminal } from './scenario.ts'
import { standings } from './standing.ts'

/** The grain terminal of the demo: about 40 machines and 160 positions. */
export const harrowPoint: Terminal = {
  seed: 'Harrow Point',
  code: 'harrow-point',
  name: 'Harrow Point',
  timeZone: 'Europe/Berlin',
  people: [manager, engineer, storekeeper, carefulTechnician, usualTechnician],
  signers: { careful: carefulTechnician, usual: usualTechnician },
  areas: areaSpecs,
  machines: machineSpecs,
  standings,
  work: harrowPointWork,
  otherWays: harrowPointWays,
}

/** A small place with one machine, so that somebody of two sites can change between them. */
export const sallowQuay: Terminal = {
  seed: 'Sallow Quay',
  code: 'sallow-quay',
  name: 'Sallow Quay',
  timeZone: 'Europe/Berlin',
  people: [manager, quayPerson],
  signers: { careful: quayPerson, usual: quayPerson },
  areas: areaSpecs.filter(({ code }) => code === 'SL'),
  machines: [
    {
      area: 'SL',
      tag: 'SQ01',
      name: 'Barge elevator',
      kind: 'bucket elevator',
      hoursPerDay: 6,
      meter: true,
      shafts: [{ code: 'HD', name: 'Head', speedRpm: 62, bearing: '22222', loadOverRating: 0.11 }],
    },
  ],
  // the only elevator of the quay waits for somebody with a grease gun
  standings: new Map([
    ['SQ01-HD-A', { kind: 'left-behind', part: 1.3 }],
    ['SQ01-HD-B', { kind: 'left-behind', part: 1.3 }],
  ]),
  work: noPlannedWork,
  otherWays: noOtherWays,
}
