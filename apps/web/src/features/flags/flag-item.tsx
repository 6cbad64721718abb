import { putOffFlag, type Flag } from '@shaftbook/contract/flags'
import { decideMount } from '@shaftbook/contract/mounts'
import { Button } from '@mantine/core'
import { formatDay } from '../../lib/format-day.ts'
import { useToday } from '../../lib/use-today.ts'
import { useUnits } from '../../lib/units.tsx'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { FlagRow } from '../../ui/flag-row.tsx'
import { AppLink } from '../../ui/link.tsx'
import { Timestamp } from '../../ui/timestamp.tsx'
import { VerdictMark } from '../../ui/verdict-mark.tsx'
import { flagActs, flagKinds, type FlagAct } from './flag-kinds.ts'
import classes from './flag-item.module.css'
import { flagSentence } from './flag-sentence.ts'

interface FlagItemProps {
  flag: Flag
  onPutOff: (flag: Flag) => void
}

/** One flag of the list, with what clears it. */
export function FlagItem({ flag, onPutOff }: FlagItemProps) {
  const { code, site, may } = useSite()
  const units = useUnits()
  const { title, urgency, verdict } = flagKinds[flag.kind]
  const today = useToday(site.timeZone)
  const { measure, detail } = flagSentence(flag, units, today)
  const cleared = flag.clearedAt !== null
  const waits = !cleared && flag.putOffUntil !== null && flag.putOffUntil > today
  const putOffWord = waits ? 'Change the date' : 'Put off'
  return (
    <FlagRow
      urgency={cleared ? 'cleared' : urgency}
      what={title}
      tag={flag.tag ?? flag.machineTag}
      href={placeHref(flag, code)}
      place={placeWords(flag)}
      measure={
        <>
          {verdict && <VerdictMark verdict={verdict} size="s" />} {measure}
        </>
      }
      since={<Since flag={flag} detail={detail} timeZone={site.timeZone} />}
      putOffUntil={waits ? <PutOffWords flag={flag} detail={detail} /> : undefined}
      action={cleared ? null : <Act flag={flag} />}
      putOff={
        !cleared && may(putOffFlag) ? (
          <Button
            variant="subtle"
            onClick={() => onPutOff(flag)}
            aria-label={`${putOffWord}: ${title}, ${flag.tag ?? flag.machineTag}`}
          >
            {putOffWord}
          </Button>
        ) : undefined
      }
    />
  )
}

function Act({ flag }: { flag: Flag }) {
  const { code, may } = useSite()
  const { title } = flagKinds[flag.kind]
  const act = actOf(flag, may)
  const { label, endpoint } = flagActs[act]
  if (!may(endpoint)) return <span className={classes.others}>{rolesOf(endpoint.access)} clears it</span>
  return (
    <Button
      component={AppLink}
      href={actHref(flag, code, act)}
      variant="default"
      aria-label={`${label}: ${title}, ${flag.tag ?? flag.machineTag}`}
    >
      {label}
    </Button>
  )
}

function Since({ flag, detail, timeZone }: { flag: Flag; detail: string; timeZone: string }) {
  if (flag.clearedAt !== null)
    return (
      <>
        {detail}. Cleared <Timestamp at={flag.clearedAt} timeZone={timeZone} relative={false} />: {flag.clearedHow}.
      </>
    )
  const byDay = flagKinds[flag.kind].group === 'Greasing'
  return (
    <>
      {detail && `${detail}. `}
      <span className={classes.together}>
        Since <Timestamp at={flag.since} timeZone={byDay ? 'UTC' : timeZone} dateOnly relative={false} />
      </span>
    </>
  )
}

function PutOffWords({ flag, detail }: { flag: Flag; detail: string }) {
  return (
    <>
      {detail && `${detail}. `}Put off until {formatDay(flag.putOffUntil!)}: {flag.putOffReason}
    </>
  )
}

function placeWords(flag: Flag): string {
  return `${flag.machineName}, ${flag.shaftName.toLowerCase()}, ${flag.areaName}`
}

/** Where the flag hangs: its position, or the machine whose shaft it is. */
function placeHref(flag: Flag, site: string): string {
  return flag.positionId ? paths.position(site, flag.positionId) : paths.machinePositions(site, flag.machineId)
}

/** What is to be done: who may decide on a mount out of its limits decides first, unless it was decided to do it again. */
function actOf({ kind, facts }: Flag, may: ReturnType<typeof useSite>['may']): FlagAct {
  const { act } = flagKinds[kind]
  const undecided = facts.mountRecordId !== undefined && facts.doAgainReason === undefined
  return flagKinds[kind].verdict && undecided && may(decideMount) ? 'decide' : act
}

/** Where the act is done that clears the flag; locating is set at the shaft, a mount is decided on at its record. */
function actHref(flag: Flag, site: string, act: FlagAct): string {
  if (act === 'decide' && flag.facts.mountRecordId) return paths.mount(site, flag.facts.mountRecordId)
  if (flag.positionId === null) return flag.shaftId ? paths.place(site, 'shaft', flag.shaftId) : placeHref(flag, site)
  if (act === 'see-position') return paths.position(site, flag.positionId)
  if (act === 'see-plan') return paths.greasePlans(site, flag.positionId)
  return act === 'log-greasing' || act === 'log-task'
    ? paths.logGreasing(site, flag.positionId, flag.facts.task)
    : paths.remount(site, flag.positionId)
}

function rolesOf(access: unknown): string {
  const roles = Array.isArray(access) ? (access as string[]).filter((role) => role !== 'manager') : []
  const words = roles.join(' or ')
  return words === '' ? 'A manager' : `${/^[aeiou]/.test(words) ? 'An' : 'A'} ${words}`
}
