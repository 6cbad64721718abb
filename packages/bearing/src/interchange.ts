import { clearanceClasses } from '@shaftbook/standards/clearance-classes'
import { printDesignation, type Designation } from './designation.ts'
import { formula, type Sourced } from './source.ts'

export interface Interchange extends Sourced {
  verdict: 'allowed' | 'ask-engineer' | 'never'
  /** One sentence for each difference that matters. */
  reasons: string[]
}

export interface InterchangeContext {
  /** Somebody has compared the cages: same temperature limits. */
  sameCageLimits?: boolean
  /** The grease plan was changed for a sealed bearing. */
  greasePlanChanged?: boolean
}

/**
 * Whether an offered bearing may replace the one a position needs: code for code with the same basic code, bore, class,
 * cage limits and groove W33 it may; a larger class, other cage or groove is the engineer's; another bore, a smaller class
 * or seals without a grease plan never. R-KIT-PAIR.
 */
export function mayReplace(needed: Designation, offered: Designation, context: InterchangeContext = {}): Interchange {
  const never = [
    ...boreReasons(needed, offered),
    ...smallerClass(needed, offered),
    ...sealReasons(needed, offered, context),
  ]
  const engineer = [
    ...codeReasons(needed, offered),
    ...largerClass(needed, offered),
    ...suffixReasons(needed, offered, context),
  ]
  const verdict = never.length > 0 ? 'never' : engineer.length > 0 ? 'ask-engineer' : 'allowed'
  const source = formula('interchange of bearings by code')
  return { verdict, reasons: [...never, ...engineer], source, rule: 'R-KIT-PAIR', cautions: [] }
}

function boreReasons(needed: Designation, offered: Designation): string[] {
  if (needed.taper === offered.taper) return []
  const name = (taper: Designation['taper']): string => (taper === null ? 'a cylindrical bore' : `a bore of ${taper}`)
  return [`${printDesignation(offered)} has ${name(offered.taper)}, the position needs ${name(needed.taper)}.`]
}

function codeReasons(needed: Designation, offered: Designation): string[] {
  return needed.basicCode === offered.basicCode
    ? []
    : [`${offered.basicCode} is another bearing than ${needed.basicCode}.`]
}

function smallerClass(needed: Designation, offered: Designation): string[] {
  if (classSteps(needed, offered) >= 0) return []
  return [`${offered.clearanceClass} has less clearance than ${needed.clearanceClass}: it would run hot.`]
}

function largerClass(needed: Designation, offered: Designation): string[] {
  if (classSteps(needed, offered) <= 0) return []
  return [`${offered.clearanceClass} for ${needed.clearanceClass} suits slow warm jobs only: the engineer decides.`]
}

function classSteps(needed: Designation, offered: Designation): number {
  return clearanceClasses.indexOf(offered.clearanceClass) - clearanceClasses.indexOf(needed.clearanceClass)
}

function sealReasons(needed: Designation, offered: Designation, context: InterchangeContext): string[] {
  if (isSealed(needed) === isSealed(offered) || context.greasePlanChanged) return []
  const [has, needs] = isSealed(offered) ? ['sealed', 'open'] : ['open', 'sealed']
  return [`The offered bearing is ${has}, the needed one ${needs}: not without another grease plan.`]
}

function isSealed({ suffixes }: Designation): boolean {
  return suffixes.some((suffix) => /^2?(RS|CS|LS|RZ)\w{0,2}$/.test(suffix))
}

function suffixReasons(needed: Designation, offered: Designation, context: InterchangeContext): string[] {
  const has = (designation: Designation): boolean => designation.suffixes.includes('W33')
  const groove =
    has(needed) === has(offered)
      ? []
      : ['Only one of the two prints the groove W33: check the holes in the outer ring.']
  const others = ({ suffixes }: Designation): string => suffixes.filter((suffix) => suffix !== 'W33').join(' ')
  const same = others(needed) === others(offered) || context.sameCageLimits
  return same ? groove : [...groove, 'Design or cage differ: compare the temperature limits of the cages.']
}
