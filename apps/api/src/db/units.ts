import { toNanometres, umFromNanometres } from '@shaftbook/bearing/units'

/** Micrometres as the whole nanometres that are stored. */
export function nmFromUm<T extends number | null>(um: T): T extends null ? T : number
export function nmFromUm(um: number | null): number | null {
  return um === null ? null : toNanometres(um, 'um')
}

/** Stored nanometres as micrometres with at most three decimals. */
export function umFromNm<T extends number | null>(nm: T): T extends null ? T : number
export function umFromNm(nm: number | null): number | null {
  return nm === null ? null : umFromNanometres(nm)
}
