import { createContext, use, useCallback, useMemo, useState, type ReactNode } from 'react'
import { formatLength, formatLengthRange, isLengthUnit, lengthUnits, type LengthUnit } from './length-units.ts'

interface Units {
  unit: LengthUnit
  symbol: string
  setUnit: (unit: LengthUnit) => void
  /** A length in µm in the person's unit, with its symbol. */
  length: (um: number) => string
  lengthRange: (fromUm: number, toUm: number) => string
}

const UnitsContext = createContext<Units | null>(null)

const keyFor = (personId: string) => `shaftbook.unit.${personId}`

function readUnit(personId: string): LengthUnit {
  try {
    const kept = localStorage.getItem(keyFor(personId))
    return isLengthUnit(kept) ? kept : 'mm'
  } catch {
    return 'mm' // storage is barred in this browser: the choice lasts for this visit only
  }
}

function keepUnit(personId: string, unit: LengthUnit): void {
  try {
    localStorage.setItem(keyFor(personId), unit)
  } catch {
    // as above
  }
}

/** Gives all pages the length unit this person chose; kept per person, so that two people can share a tablet. */
export function UnitsProvider({ personId, children }: { personId: string; children: ReactNode }) {
  const [chosen, setChosen] = useState<{ personId: string; unit: LengthUnit } | null>(null)
  const unit = chosen?.personId === personId ? chosen.unit : readUnit(personId)
  const setUnit = useCallback(
    (next: LengthUnit) => {
      keepUnit(personId, next)
      setChosen({ personId, unit: next })
    },
    [personId],
  )
  const units = useMemo<Units>(
    () => ({
      unit,
      symbol: lengthUnits[unit].symbol,
      setUnit,
      length: (um) => formatLength(um, unit),
      lengthRange: (fromUm, toUm) => formatLengthRange(fromUm, toUm, unit),
    }),
    [unit, setUnit],
  )
  return <UnitsContext value={units}>{children}</UnitsContext>
}

export function useUnits(): Units {
  const units = use(UnitsContext)
  if (!units) throw new Error('useUnits needs a UnitsProvider above it')
  return units
}
