import { listAudit, listPeople, readSite } from '@shaftbook/contract/access'
import type { Endpoint } from '@shaftbook/contract/endpoint'
import { listMakerCharts } from '@shaftbook/contract/maker-charts'
import { areas, bearingTypes, gauges, greases, meters } from '@shaftbook/contract/register-tables'
import type { SetupPart } from '../../paths.ts'

export interface SetupPartWords {
  readonly part: SetupPart
  readonly label: string
  readonly sentence: string
  /** Who may read it may go there. */
  readonly endpoint: Endpoint
}

/** The contents of the setup, in the order in which a new plant needs them. */
export const setupParts: readonly { title: string; parts: readonly SetupPartWords[] }[] = [
  {
    title: 'The plant',
    parts: [
      {
        part: 'places',
        label: 'Areas, machines, shafts and positions',
        sentence: 'Where bearings sit, from the outside in.',
        endpoint: areas.list,
      },
      {
        part: 'meters',
        label: 'Hour meters',
        sentence: 'What they show, and when one was exchanged.',
        endpoint: meters.list,
      },
    ],
  },
  {
    title: 'What it takes',
    parts: [
      {
        part: 'bearing-types',
        label: 'Bearing types',
        sentence: 'Designations with their dimensions, taper and clearance class.',
        endpoint: bearingTypes.list,
      },
      {
        part: 'charts',
        label: "Makers' reduction charts",
        sentence: 'How far a mount reduces the clearance, by bore; as the maker of the bearing says.',
        endpoint: listMakerCharts,
      },
      { part: 'greases', label: 'Greases', sentence: 'Names, thickeners and grades.', endpoint: greases.list },
      {
        part: 'gauges',
        label: 'Gauges',
        sentence: 'Blade sets for the clearance, with their blades and until when they are checked.',
        endpoint: gauges.list,
      },
    ],
  },
  {
    title: 'The book',
    parts: [
      {
        part: 'site',
        label: 'Site and its rules',
        sentence: 'Name, time zone, and the settings that verdicts and due dates go by.',
        endpoint: readSite,
      },
      {
        part: 'people',
        label: 'People',
        sentence: 'Who belongs to the site, and in which role.',
        endpoint: listPeople,
      },
      { part: 'audit', label: 'Changes', sentence: 'Who changed what, and when.', endpoint: listAudit },
    ],
  },
]
