import { allCalculations } from '@shaftbook/contract/calculations/all-calculations'
import { calculationGroups, type Calculation } from '@shaftbook/contract/calculations/calculation'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { AppLink } from '../../ui/link.tsx'
import classes from './bench.module.css'

/** The calculations by group; with a search, those that it names. */
export function BenchContents({ search }: { search: string }) {
  const { code } = useSite()
  const found = allCalculations.filter((calculation) => isMeant(calculation, search))
  if (found.length === 0)
    return (
      <EmptyState title={`No calculation is called "${search}"`} text="Try another word: dose, torque, nut, life." />
    )
  const groups = Object.entries(calculationGroups)
    .map(([key, title]) => ({ key, title, members: found.filter(({ group }) => group === key) }))
    .filter(({ members }) => members.length > 0)
  return (
    <div className={classes.contents}>
      {groups.map(({ key, title, members }) => (
        <section key={key} aria-labelledby={`group-${key}`}>
          <h2 id={`group-${key}`} className={classes.title}>
            {title}
          </h2>
          <ul>
            {members.map((calculation) => (
              <li key={calculation.name} className={classes.entry}>
                <AppLink href={paths.calculation(code, calculation.name)} className={classes.link}>
                  {calculation.title}
                </AppLink>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </div>
  )
}

/** Every word of the search stands somewhere in the title, the formula or the group. */
function isMeant({ title, words, group, name }: Calculation, search: string): boolean {
  const text = `${title} ${words} ${calculationGroups[group]} ${name}`.toLowerCase()
  return search
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word))
}
