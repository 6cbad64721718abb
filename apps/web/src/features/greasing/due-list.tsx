import { Button } from '@mantine/core'
import type { GreaseTask } from '@shaftbook/contract/grease-plans'
import { createGreasing, type DueItem } from '@shaftbook/contract/greasing'
import { formatDay } from '../../lib/format-day.ts'
import { useToday } from '../../lib/use-today.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { DueMark } from '../../ui/due-mark.tsx'
import { AppLink } from '../../ui/link.tsx'
import { entryWords } from './entry-words.ts'
import { dueDistance, dueReason } from './due-words.ts'
import { taskActs } from './task-acts.ts'
import { taskWords } from './task-words.ts'
import classes from './due-list.module.css'

interface DueListProps {
  items: readonly DueItem[]
  onLog: (positionId: string, task: GreaseTask) => void
  onPlan: (positionId: string) => void
}

/** What is due, each row with its one act. */
export function DueList({ items, onLog, onPlan }: DueListProps) {
  const { site } = useSite()
  const today = useToday(site.timeZone)
  return (
    <ul className={classes.list} aria-label="What is due, the longest due first">
      {items.map((item) => (
        <DueRow key={item.planId} item={item} today={today} onLog={onLog} onPlan={onPlan} />
      ))}
    </ul>
  )
}

function DueRow({ item, today, onLog, onPlan }: Omit<DueListProps, 'items'> & { item: DueItem; today: string }) {
  const { code, may } = useSite()
  const { positionId, tag } = item
  const { log } = taskActs[item.task]
  return (
    <li className={classes.row}>
      <div className={classes.state}>
        <DueMark state={item.state} />
        <p className={classes.soft}>{dueDistance(item, today)}</p>
      </div>
      <div className={classes.place}>
        <AppLink href={paths.position(code, positionId)} className={classes.tag}>
          {tag}
        </AppLink>
        <p>
          {item.machineName}, {item.positionName.toLowerCase()}
        </p>
        <p className={classes.soft}>{item.areaName}</p>
      </div>
      <div className={classes.dose}>
        <p>
          {item.doseG === null ? (
            <strong>{taskWords[item.task]}</strong>
          ) : (
            <>
              <strong>{item.doseG} g</strong> {item.greaseName}
            </>
          )}
        </p>
        <p className={classes.soft}>
          {item.entry ? entryWords[item.entry] : item.doseG === null ? item.oil : taskWords[item.task]}
        </p>
      </div>
      <div className={classes.due}>
        <p>{formatDay(item.dueOn)}</p>
        <p className={classes.soft}>{dueReason(item)}</p>
      </div>
      <div className={classes.acts}>
        <Button variant="default" onClick={() => onPlan(positionId)} aria-label={`Plan of ${tag}`}>
          Plan
        </Button>
        {may(createGreasing) && (
          <Button onClick={() => onLog(positionId, item.task)} aria-label={`${log} of ${tag}`}>
            {log}
          </Button>
        )}
      </div>
    </li>
  )
}
