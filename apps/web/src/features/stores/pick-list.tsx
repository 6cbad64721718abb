import type { Kit } from '@shaftbook/contract/kits'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { AppLink } from '../../ui/link.tsx'
import { inBinOrder } from './bin-order.ts'
import { Need } from './kit-lines.tsx'
import { partKindWords } from './part-kinds.ts'
import classes from './pick-list.module.css'

/** The lines of a kit as one walks the shelves, with a box to tick on paper. */
export function PickList({ kit, tag }: { kit: Kit; tag: string }) {
  const { code } = useSite()
  return (
    <table className={classes.list}>
      <caption className="visually-hidden">What goes on at {tag}, in the order of the bins</caption>
      <thead>
        <tr>
          <th scope="col">Bin</th>
          <th scope="col">Part</th>
          <th scope="col" className={classes.wide}>
            What it is
          </th>
          <th scope="col" className={classes.number}>
            Quantity
          </th>
          <th scope="col">Need</th>
          <th scope="col" className={classes.paper}>
            Picked
          </th>
        </tr>
      </thead>
      <tbody>
        {inBinOrder(kit.lines).map((line) => (
          <tr key={line.id}>
            <td className={classes.bin}>{line.bin ?? 'no bin'}</td>
            <th scope="row">
              <AppLink href={paths.part(code, line.partId)}>{line.designation}</AppLink>
              <span className={classes.under}>{line.partNumber}</span>
            </th>
            <td className={classes.wide}>{line.description || partKindWords[line.kind]}</td>
            <td className={classes.number}>
              {line.quantity} {line.unit}
            </td>
            <td>
              <Need line={line} />
            </td>
            <td className={classes.paper}>
              <span className="visually-hidden">to tick</span>
              <span className={classes.box} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
