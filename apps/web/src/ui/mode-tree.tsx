import { Button, TextInput } from '@mantine/core'
import { useId, useState } from 'react'
import { modeRows, type ModeNode } from './mode-tree-rows.ts'
import classes from './mode-tree.module.css'

interface ModeTreeProps {
  legend: string
  nodes: readonly ModeNode[]
  /** Clause chosen, such as "5.3.3.2". */
  value: string | null
  onChange: (clause: string) => void
  error?: string | undefined
}

/** Picks a failure mode by ISO 15243 clause: a tree of radio buttons, found by its branches or by what is seen. */
export function ModeTree({ legend, nodes, value, onChange, error }: ModeTreeProps) {
  const [search, setSearch] = useState('')
  const [openBranches, setOpenBranches] = useState<ReadonlySet<string>>(new Set())
  const name = useId()
  const errorId = useId()
  const rows = modeRows(nodes, { search, open: openBranches, chosen: value })
  const toggle = (clause: string) =>
    setOpenBranches((open) => {
      const next = new Set(open)
      if (!next.delete(clause)) next.add(clause)
      return next
    })

  return (
    <fieldset className={classes.tree} aria-describedby={error ? errorId : undefined}>
      <legend className={classes.legend}>{legend}</legend>
      <TextInput
        label="Find by name or by what you see"
        placeholder="grey raceway, rust, cracked ring"
        value={search}
        onChange={(event) => setSearch(event.currentTarget.value)}
      />
      {rows.length === 0 && (
        <div className={classes.none}>
          <p>No mode has these words. Try one word, or look through the branches.</p>
          <Button variant="default" onClick={() => setSearch('')}>
            Show the branches
          </Button>
        </div>
      )}
      <ul className={classes.rows}>
        {rows.map(({ node, depth, hasChildren, isOpen }) => (
          <li key={node.clause} className={classes.row} style={{ paddingLeft: depth * 24 }}>
            {hasChildren ? (
              <button
                type="button"
                className={classes.fold}
                aria-expanded={isOpen}
                aria-label={`${isOpen ? 'Close' : 'Open'} ${node.term}`}
                onClick={() => toggle(node.clause)}
              >
                <svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true" data-open={isOpen || undefined}>
                  <path d="M4 2l4.5 4L4 10" />
                </svg>
              </button>
            ) : (
              <span className={classes.leaf} />
            )}
            <label className={classes.label}>
              <input
                type="radio"
                name={name}
                value={node.clause}
                checked={value === node.clause}
                onChange={() => onChange(node.clause)}
              />
              <span>
                <span className={classes.term} data-branch={hasChildren || undefined}>
                  {node.term} <span className={classes.clause}>{node.clause}</span>
                </span>
                {node.signs && <span className={classes.signs}>{node.signs}</span>}
              </span>
            </label>
          </li>
        ))}
      </ul>
      {error && (
        <p id={errorId} className={classes.error}>
          {error}
        </p>
      )}
    </fieldset>
  )
}
