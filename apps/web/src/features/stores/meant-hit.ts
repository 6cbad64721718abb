import type { Hits } from './stores-queries.ts'

export type Hit = { kind: 'position' | 'part' | 'kit'; id: string }

/** What a search means when Enter is pressed: the one thing found, or the one whose tag, number or code was typed in full. */
export function meantHit(typed: string, hits: Hits): Hit | null {
  const all = [
    ...hits.positions.items.map(({ id, tag }) => ({ kind: 'position' as const, id, names: [tag] })),
    ...hits.parts.items.map(({ id, number, designation }) => ({
      kind: 'part' as const,
      id,
      names: [number, designation],
    })),
    ...hits.kits.items.map(({ id, name }) => ({ kind: 'kit' as const, id, names: [name] })),
  ]
  const wanted = plain(typed)
  const exact = all.filter(({ names }) => names.some((name) => plain(name) === wanted))
  const [meant] = exact.length > 0 ? exact : all
  if (!meant || (exact.length === 0 ? all.length : exact.length) > 1) return null
  return { kind: meant.kind, id: meant.id }
}

function plain(text: string): string {
  return text.replaceAll(/\s/g, '').toUpperCase()
}
