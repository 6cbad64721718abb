import { useCallback } from 'react'

/** A picture that lies on this device. Its address is given back when it is not shown any more. */
export function BlobImage({ blob, alt }: { blob: Blob; alt: string }) {
  const show = useCallback(
    (image: HTMLImageElement) => {
      const url = URL.createObjectURL(blob)
      image.src = url
      return () => URL.revokeObjectURL(url)
    },
    [blob],
  )
  return <img ref={show} alt={alt} />
}
