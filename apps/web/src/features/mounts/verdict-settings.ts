import { defaultBudget, readingUncertaintyUm, type UncertaintyBudget } from '@shaftbook/bearing/uncertainty'
import type { VerdictSettings } from '@shaftbook/bearing/verdict'
import type { SiteSettings } from '@shaftbook/contract/access'

/** The site's settings as the formulas take them. */
export function verdictSettings(settings: SiteSettings): Partial<VerdictSettings> {
  const {
    coverageFactor,
    reductionAcceptance,
    residualAcceptance,
    readingStandardUncertaintyUm: oneReadingUm,
  } = settings
  return {
    guardFactor: coverageFactor,
    reductionRule: reductionAcceptance,
    residualRule: residualAcceptance,
    budget: oneReadingUm === null ? defaultBudget : scaledTo(oneReadingUm),
  }
}

/** The usual budget, each part in proportion, so that one reading has the site's own standard uncertainty. */
function scaledTo(oneReadingUm: number): UncertaintyBudget {
  const { bladeUm, stepUm, feelUm, seatingUm, temperatureUm } = defaultBudget
  const by = oneReadingUm / readingUncertaintyUm([1])
  return {
    bladeUm: bladeUm * by,
    stepUm: stepUm * by,
    feelUm: feelUm * by,
    seatingUm: seatingUm * by,
    temperatureUm: temperatureUm * by,
  }
}
