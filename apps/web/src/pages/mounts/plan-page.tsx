import { changeMountPlan, createMountPlan, type MountPlan } from '@shaftbook/contract/mount-plans'
import { createMount } from '@shaftbook/contract/mounts'
import type { PositionOverview } from '@shaftbook/contract/position-views'
import { useQuery, useSuspenseQuery } from '@tanstack/react-query'
import { useNavigate, useParams } from '@tanstack/react-router'
import { DropPlan } from '../../features/mount-plans/drop-plan.tsx'
import { PlanForm } from '../../features/mount-plans/plan-form.tsx'
import { StartPlan } from '../../features/mount-plans/plan-list.tsx'
import { planQueries } from '../../features/mount-plans/plan-queries.ts'
import classes from '../../features/mount-plans/plans.module.css'
import { formatDay } from '../../lib/format-day.ts'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { EmptyState } from '../../ui/empty-state.tsx'
import { AppLink } from '../../ui/link.tsx'
import { useNotice } from '../../ui/notice.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { PagePart } from '../../ui/page-part.tsx'

/** Plans a mount at a position. */
export function PlanMountPage() {
  const { id = '' }: { id?: string } = useParams({ strict: false })
  const { code, may } = useSite()
  const { data: place } = useSuspenseQuery(planQueries.place(code, id))
  const { position, machine } = place
  if (!may(createMountPlan))
    return (
      <EmptyState
        heading="h1"
        title="Mounts are planned by an engineer or a manager"
        text="You can read what is planned."
        action={<AppLink href={paths.plannedMounts(code)}>Planned mounts</AppLink>}
      />
    )
  return (
    <>
      <PageHead
        title={`Plan a mount at ${position.tag}`}
        sentence={`${position.name}, ${machine.name}. It stands among the planned mounts until it is signed or dropped.`}
        trail={[
          { label: machine.name, href: paths.machinePositions(code, machine.id) },
          { label: position.tag, href: paths.position(code, id) },
        ]}
      />
      <FormAt place={place} backHref={paths.position(code, id)} />
    </>
  )
}

/** One planned mount: what is to be done, started from here, changed or dropped by an engineer. */
export function PlannedMountPage() {
  const { planId = '' }: { planId?: string } = useParams({ strict: false })
  const { code, may } = useSite()
  const { data: plan } = useSuspenseQuery(planQueries.plan(code, planId))
  const open = plan.state === 'open'
  return (
    <>
      <PageHead
        title={`Mount planned at ${plan.tag}`}
        sentence={`${plan.machineName}, ${plan.areaName}. Planned by ${plan.plannedBy}.`}
        trail={[
          { label: 'Mounts', href: paths.mounts(code) },
          { label: 'Planned', href: paths.plannedMounts(code) },
        ]}
        actions={open && may(createMount) && <StartPlan plan={plan} />}
        facts={[
          { label: 'Day', value: formatDay(plan.plannedFor) },
          { label: 'Bearing', value: plan.designation },
          { label: 'Kit', value: plan.kitName ?? 'none named' },
          { label: 'Who', value: plan.who || 'whoever is there' },
        ]}
      />
      <Ended plan={plan} />
      <PagePart title="Why and how">
        <p className={classes.note}>{plan.reason}</p>
        {plan.note && <p className={classes.note}>{plan.note}</p>}
        <p>
          <AppLink href={paths.position(code, plan.positionId)}>Position {plan.tag}</AppLink>
          {plan.kitId && (
            <>
              {' · '}
              <AppLink href={paths.pickList(code, plan.positionId)}>Pick list of its kit</AppLink>
            </>
          )}
        </p>
      </PagePart>
      {open && may(changeMountPlan) && (
        <PagePart title="Change the plan" aside={<DropPlan plan={plan} />}>
          <ChangePlan key={plan.version} plan={plan} />
        </PagePart>
      )}
    </>
  )
}

function Ended({ plan }: { plan: MountPlan }) {
  const { code } = useSite()
  if (plan.state === 'dropped') return <p>Dropped: {plan.droppedReason}</p>
  if (plan.state !== 'done') return null
  return (
    <p>
      Done
      {plan.mountRecordId && (
        <>
          : <AppLink href={paths.mount(code, plan.mountRecordId)}>the mount record</AppLink>
        </>
      )}
      .
    </p>
  )
}

function ChangePlan({ plan }: { plan: MountPlan }) {
  const { code } = useSite()
  const { data: place } = useSuspenseQuery(planQueries.place(code, plan.positionId))
  return <FormAt place={place} plan={plan} backHref={paths.plannedMounts(code)} />
}

function FormAt({ place, plan, backHref }: { place: PositionOverview; plan?: MountPlan; backHref: string }) {
  const { code } = useSite()
  const navigate = useNavigate()
  const notice = useNotice()
  const { bearingType, position } = place
  const others = useQuery(planQueries.typesLike(code, bearingType))
  const saved = () => {
    notice.done(plan ? 'The plan is changed.' : `The mount at ${position.tag} is planned.`)
    void navigate({ href: paths.plannedMounts(code), ignoreBlocker: true })
  }
  return (
    <PlanForm
      positionId={position.id}
      {...(plan && { plan })}
      planned={bearingType}
      others={others.data ?? []}
      backHref={backHref}
      onSaved={saved}
    />
  )
}
