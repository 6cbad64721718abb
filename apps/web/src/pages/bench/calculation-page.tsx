import { allCalculations } from '@shaftbook/contract/calculations/all-calculations'
import { useNavigate, useParams, useSearch } from '@tanstack/react-router'
import type { BenchSearch } from '../../features/bench/bench-entry.ts'
import { BenchWork } from '../../features/bench/bench-work.tsx'
import { paths } from '../../paths.ts'
import { useSite } from '../../session/site-access.tsx'
import { PageHead } from '../../ui/page-head.tsx'
import { NotFoundPage } from '../not-found.tsx'

/** One calculation: its form, its result, and an address that holds its numbers. */
export function CalculationPage() {
  const { code } = useSite()
  const { name = '' }: { name?: string } = useParams({ strict: false })
  const search: BenchSearch = useSearch({ strict: false })
  const navigate = useNavigate()
  const calculation = allCalculations.find((candidate) => candidate.name === name)
  if (!calculation) return <NotFoundPage />
  return (
    <>
      <PageHead
        title={calculation.title}
        sentence={calculation.words}
        trail={[{ label: 'Bench', href: paths.bench(code) }]}
      />
      <BenchWork
        key={name}
        calculation={calculation}
        search={search}
        onSearch={(next) => void navigate({ to: '.', search: () => next, replace: true, resetScroll: false })}
      />
    </>
  )
}
