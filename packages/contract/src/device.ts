import { z } from 'zod'
import { Flagged, Id, page, pageQuery, siteParams } from './common.ts'
import { endpoint } from './endpoint.ts'
import { PositionOverview } from './position-views.ts'
import { everyone } from './roles.ts'
import { sitePath } from './site-path.ts'

/** What a device takes along to work without a network; the lists beside it are the ordinary ones. */
export const listPositionOverviews = endpoint({
  name: 'list-position-overviews',
  method: 'GET',
  path: sitePath('position-overviews'),
  access: everyone,
  summary: 'Positions in use by tag, each with everything that stands there today',
  params: siteParams,
  query: z.object({
    ...pageQuery,
    areaId: Id.optional(),
    planned: Flagged.optional().meta({ description: 'true: only positions at which a mount is planned' }),
  }),
  replies: { 200: page(PositionOverview) },
})
