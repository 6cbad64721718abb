import type { PositionOverview } from '@shaftbook/contract/position-views'
import { useUnits } from '../../lib/units.tsx'
import { BandRuler } from './band-ruler.tsx'
import classes from './position-page.module.css'

/** The band that the next mount has to finish in. `sourceText` says where it comes from. */
export function NextBand({ place, sourceText }: { place: PositionOverview; sourceText: string | null }) {
  const units = useUnits()
  const { band, residualMinUm, position } = place
  if (!band)
    return (
      <p className={classes.soft}>
        {position.seat === 'cylindrical'
          ? 'A cylindrical seat is not driven up: there is no band. Fits decide.'
          : 'No band is known for this bearing: an engineer gives the position its own, or the chart of the maker.'}
      </p>
    )
  return (
    <>
      <p className={classes.band}>{units.lengthRange(band.minUm, band.maxUm)}</p>
      <BandRuler minUm={band.minUm} maxUm={band.maxUm} />
      <p className={classes.soft}>reduction of the radial internal clearance</p>
      <p>
        {residualMinUm === null
          ? 'No least clearance is set: an engineer must give one.'
          : `At least ${units.length(residualMinUm)} must be left.`}
      </p>
      <p className={classes.soft}>{sourceText}</p>
    </>
  )
}
