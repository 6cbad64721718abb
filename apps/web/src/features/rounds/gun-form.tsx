import { Button, NativeSelect, Textarea, TextInput } from '@mantine/core'
import { parseNumber } from '@shaftbook/bearing/number-text'
import { guns, type Gun } from '@shaftbook/contract/guns'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useRef, useState, type FormEvent } from 'react'
import { v7 as newId } from 'uuid'
import { call } from '../../api/call.ts'
import { invalidateSite } from '../../api/invalidate-site.ts'
import { useToday } from '../../lib/use-today.ts'
import { useSite } from '../../session/site-access.tsx'
import { NumberField } from '../../ui/number-field.tsx'
import type { SiteGrease } from './gun-choices.ts'
import classes from './rounds.module.css'

interface GunFormProps {
  /** The gun that is changed; without one a gun is entered. */
  gun?: Gun
  greases: readonly SiteGrease[]
  onSaved: () => void
}

type Faults = Partial<Record<'name' | 'strokes' | 'grams', string>>

/** Enters a gun with what its strokes weigh, or weighs it anew. */
export function GunForm({ gun, greases, onSaved }: GunFormProps) {
  const { code, site } = useSite()
  const client = useQueryClient()
  const today = useToday(site.timeZone)
  const form = useRef<HTMLFormElement>(null)
  const [id] = useState(() => gun?.id ?? newId())
  const [name, setName] = useState(gun?.name ?? '')
  const [strokes, setStrokes] = useState(String(gun?.strokesWeighed ?? 10))
  const [grams, setGrams] = useState(gun ? String(weighedG(gun)) : '')
  const [greaseId, setGreaseId] = useState(gun?.greaseId ?? '')
  const [note, setNote] = useState(gun?.note ?? '')
  const [faults, setFaults] = useState<Faults>({})
  const count = parseNumber(strokes) ?? 0
  const perStroke = Math.round(((parseNumber(grams) ?? 0) / count) * 1000) / 1000
  const saving = useMutation({
    mutationFn: () => {
      const same = gun?.gramsPerStroke === perStroke && gun.strokesWeighed === count
      const weighed = {
        gramsPerStroke: perStroke,
        strokesWeighed: count,
        calibratedOn: same ? gun.calibratedOn : today,
      }
      const body = { name: name.trim(), note: note.trim(), greaseId: greaseId || null, ...weighed }
      return gun
        ? call(guns.change, { params: { site: code, id }, version: gun.version, body })
        : call(guns.create, { params: { site: code }, body: { id, ...body } })
    },
    onSuccess: async () => {
      await invalidateSite(client, code)
      onSaved()
    },
  })
  const submit = (event: FormEvent): void => {
    event.preventDefault()
    const found = gunFaults(name, count, perStroke)
    setFaults(found)
    const [first] = Object.keys(found)
    if (first) form.current?.querySelector<HTMLElement>(`[name="${first}"]`)?.focus()
    else saving.mutate()
  }
  return (
    <form ref={form} className={classes.gun} onSubmit={submit} noValidate>
      <TextInput
        name="name"
        label="Name"
        description="As it is marked, such as Gun 2"
        withAsterisk
        value={name}
        error={faults.name}
        onChange={(event) => setName(event.currentTarget.value)}
      />
      <div className={classes.pair}>
        <NumberField
          name="strokes"
          label="Strokes weighed"
          unit="×"
          text={strokes}
          onText={setStrokes}
          error={faults.strokes}
          required
        />
        <NumberField
          name="grams"
          label="They weigh"
          unit="g"
          text={grams}
          onText={setGrams}
          error={faults.grams}
          required
        />
      </div>
      <p className={classes.soft}>
        {perStroke > 0 && Number.isFinite(perStroke)
          ? `One stroke gives ${perStroke} g.`
          : 'Weigh ten strokes of the gun to know one.'}
      </p>
      <NativeSelect
        label="Loaded with"
        description="Greases must not be mixed: change this only when the gun is cleaned and loaded anew."
        value={greaseId}
        onChange={(event) => setGreaseId(event.currentTarget.value)}
        data={[
          { value: '', label: 'Nobody has said' },
          ...greases.map((grease) => ({ value: grease.id, label: grease.name })),
        ]}
      />
      <Textarea
        label="Note"
        autosize
        minRows={1}
        value={note}
        onChange={(event) => setNote(event.currentTarget.value)}
      />
      {saving.isError && (
        <p className={classes.fault} role="alert">
          {saving.error.message}
        </p>
      )}
      <div className={classes.acts}>
        <Button type="submit" loading={saving.isPending}>
          {gun ? 'Change the gun' : 'Enter the gun'}
        </Button>
      </div>
    </form>
  )
}

function weighedG({ gramsPerStroke, strokesWeighed }: Gun): number {
  return Math.round(gramsPerStroke * (strokesWeighed ?? 10) * 1000) / 1000
}

function gunFaults(name: string, count: number, perStroke: number): Faults {
  return {
    ...(name.trim() === '' && { name: 'Enter a name.' }),
    ...(!(Number.isInteger(count) && count >= 1 && count <= 1000) && { strokes: 'Enter how many strokes, 1 to 1000.' }),
    ...(!(perStroke >= 0.1 && perStroke <= 10) && { grams: 'A stroke gives 0.1 to 10 g: weigh once more.' }),
  }
}
