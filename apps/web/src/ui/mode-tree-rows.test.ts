import { describe, expect, it } from 'vitest'
import { modeRows, type ModeNode } from './mode-tree-rows.ts'

const nodes: readonly ModeNode[] = Object.freeze([
  { clause: '5.2', term: 'Wear', parent: null, signs: '' },
  { clause: '5.2.2', term: 'Abrasive wear', parent: '5.2', signs: 'Dull grey raceways' },
  { clause: '5.3', term: 'Corrosion', parent: null, signs: '' },
  { clause: '5.3.3', term: 'Frictional corrosion', parent: '5.3', signs: '' },
  { clause: '5.3.3.2', term: 'Fretting corrosion', parent: '5.3.3', signs: 'Red-brown powder in the bore' },
])
const clauses = (view: Partial<Parameters<typeof modeRows>[1]>) =>
  modeRows(nodes, { search: '', open: new Set(), chosen: null, ...view }).map(({ node }) => node.clause)

describe('modeRows(nodes, view)', () => {
  it('shows the first level of a closed tree', () => expect(clauses({})).toEqual(['5.2', '5.3']))
  it('shows the children of an open branch', () =>
    expect(clauses({ open: new Set(['5.2']) })).toEqual(['5.2', '5.2.2', '5.3']))
  it('opens the way to the chosen mode', () =>
    expect(clauses({ chosen: '5.3.3.2' })).toEqual(['5.2', '5.3', '5.3.3', '5.3.3.2']))
  it('finds by what is seen, with the branches above', () =>
    expect(clauses({ search: 'POWDER red' })).toEqual(['5.3', '5.3.3', '5.3.3.2']))
  it('finds by clause, and nothing for words that no mode has', () => {
    expect(clauses({ search: '5.2.2' })).toEqual(['5.2', '5.2.2'])
    expect(clauses({ search: 'zebra' })).toEqual([])
  })
  it('treats a node whose parent is not listed as first level', () =>
    expect(modeRows([nodes[4]!], { search: '', open: new Set(), chosen: null })).toHaveLength(1))
})
