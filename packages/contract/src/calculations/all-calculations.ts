import { assemblyCalculations } from './assembly.ts'
import type { Calculation } from './calculation.ts'
import { clearanceCalculations } from './clearance.ts'
import { driveUpCalculations } from './drive-up.ts'
import { feelerCalculations } from './feeler.ts'
import { greaseCalculations } from './grease.ts'
import { intervalCalculations } from './grease-interval.ts'
import { guidanceCalculations } from './guidance.ts'
import { kitCalculations } from './kit.ts'
import { lifeCalculations } from './life.ts'
import { seatCalculations } from './seats.ts'
import { storesCalculations } from './stores.ts'
import { verdictCalculations } from './verdict.ts'

/** Every calculation that can be asked for, in the order of the bench. */
export const allCalculations: readonly Calculation[] = [
  ...verdictCalculations,
  ...clearanceCalculations,
  ...feelerCalculations,
  ...guidanceCalculations,
  ...driveUpCalculations,
  ...seatCalculations,
  ...kitCalculations,
  ...storesCalculations,
  ...greaseCalculations,
  ...intervalCalculations,
  ...lifeCalculations,
  ...assemblyCalculations,
]
