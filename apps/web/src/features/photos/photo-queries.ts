import { listPhotos, readPhotoImage } from '@shaftbook/contract/photos'
import { infiniteQueryOptions } from '@tanstack/react-query'
import { addressOf, call } from '../../api/call.ts'
import { nextCursor } from '../../api/listed.ts'

/** Whose photos: all of a position, or those of one record. */
export type PhotosWhere = { positionId: string } | { subjectId: string }

export const photosQuery = (site: string, where: PhotosWhere) =>
  infiniteQueryOptions({
    queryKey: ['photos', site, where],
    queryFn: ({ pageParam, signal }) =>
      call(listPhotos, { params: { site }, query: { ...where, limit: 24, cursor: pageParam } }, signal),
    initialPageParam: undefined as string | undefined,
    getNextPageParam: nextCursor,
  })

export function photoAddress(site: string, id: string, size: 'full' | 'small'): string {
  return addressOf(readPhotoImage, { params: { site, id }, query: { size } })
}
