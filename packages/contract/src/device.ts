import { z } from 'zod'
import { Flagged, Id, page, pageQuery, siteParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { PositionHistory, PositionOverview } from './position-views.ts'
import { everyone } from './roles.ts'
import { sitePath } from './site-path.ts'

const ofPositions = z.object({
  ...pageQuery,
  areaId: Id.optional(),
  planned: Flagged.optional().meta({ description: 'true: only positions at which a mount is planned' }),
})

/** What a device takes along to work without a network; the lists beside it are the ordinary ones. */
export const listPositionOverviews = endpoint({
  name: 'list-position-overviews',
  method: 'GET',
  path: sitePath('position-overviews'),
  access: everyone,
  summary: 'Positions in use by tag, each with everything that stands there today',
  params: siteParams,
  query: ofPositions,
  replies: { 200: page(PositionOverview) },
})

/** The life strip of a position with the greasings of late: what fits on a device. */
export const HistoryOfPosition = z.object({ positionId: Id, ...PositionHistory.shape })
export const listPositionHistories = endpoint({
  name: 'list-position-histories',
  method: 'GET',
  path: sitePath('position-histories'),
  access: everyone,
  summary: 'Life strips of positions in use by tag, each with its newest 50 greasings',
  params: siteParams,
  query: ofPositions,
  replies: { 200: page(HistoryOfPosition) },
})
