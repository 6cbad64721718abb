import type { RoundWalk } from '@shaftbook/contract/round-walks'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import type { DataColumn } from '../../ui/data-table-types.ts'
import { DataTable } from '../../ui/data-table.tsx'
import { AppLink } from '../../ui/link.tsx'
import { oldGreaseWords, outcomeWords } from './round-words.ts'

type WalkedStop = RoundWalk['stops'][number]

/** Every stop of a walk with what was done there. */
export function WalkResults({ walk }: { walk: RoundWalk }) {
  const { code } = useSite()
  const columns: DataColumn<WalkedStop>[] = [
    {
      key: 'tag',
      header: 'Position',
      cell: (stop) => placeLink(code, stop),
      phone: 'title',
    },
    {
      key: 'result',
      header: 'Result',
      cell: ({ result }) => (result ? outcomeWords[result.outcome] : 'Left open'),
      phone: 'aside',
    },
    { key: 'dose', header: 'Dose', cell: ({ result }) => doseText(result) },
    {
      key: 'old',
      header: 'Old grease',
      cell: ({ result }) => (result?.oldGrease ? oldGreaseWords[result.oldGrease] : '–'),
    },
    { key: 'relief', header: 'Relief', cell: ({ result }) => reliefText(result?.reliefClosed ?? null) },
    {
      key: 'heat',
      header: 'Temperature',
      cell: ({ result }) => (result?.temperatureC == null ? '–' : `${result.temperatureC} °C`),
    },
    {
      key: 'said',
      header: 'Said',
      cell: ({ result }) => [result?.reason, result?.extraReason, result?.note].filter(Boolean).join('; ') || '–',
    },
  ]
  return (
    <DataTable<WalkedStop>
      caption="Stops of the walk"
      columns={columns}
      rows={walk.stops}
      rowKey={({ id }) => id}
      empty="No stops"
    />
  )
}

function placeLink(site: string, { tag, positionId }: WalkedStop) {
  return <AppLink href={paths.position(site, positionId)}>{tag}</AppLink>
}

function doseText(result: WalkedStop['result']): string {
  if (result?.doseG == null) return '–'
  const strokes = result.strokes === null ? '' : `, ${result.strokes} strokes of ${result.gunName}`
  const over = result.overdoseConfirmed ? ', more than the plan' : ''
  return `${result.doseG} g${strokes}${over}`
}

function reliefText(closed: boolean | null): string {
  if (closed === null) return '–'
  return closed ? 'closed again' : 'left open'
}
