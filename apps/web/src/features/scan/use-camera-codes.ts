import { useEffect, useEffectEvent, useRef, useState, type RefObject } from 'react'
import { CameraError, openCamera, type Camera, type CameraFault } from './camera.ts'

export type CameraState =
  | { readonly kind: 'starting' }
  | { readonly kind: 'looking'; readonly light: Camera['light'] }
  | { readonly kind: 'fault'; readonly fault: CameraFault }

/** Longest side of the picture that is looked through, in pixels: enough for a code at arm's length. */
const lookedAtPx = 900
const pauseMs = 120
/** The same code is not told again while it stays before the camera. */
const againAfterMs = 3000

/**
 * Shows the camera in a video element and tells each code that it sees, until the component goes.
 */
export function useCameraCodes(
  video: RefObject<HTMLVideoElement | null>,
  kinds: 'labels' | 'boxes',
  onCode: (text: string) => void,
): CameraState {
  const [state, setState] = useState<CameraState>({ kind: 'starting' })
  const last = useRef({ text: '', atMs: 0 })
  const tell = useEffectEvent((text: string) => {
    const now = Date.now()
    const isNew = text !== last.current.text || now - last.current.atMs > againAfterMs
    last.current = { text, atMs: now }
    if (isNew) onCode(text)
  })
  useEffect(() => {
    const ended = new AbortController()
    void (async () => {
      try {
        const camera = await openCamera()
        ended.signal.addEventListener('abort', () => camera.stop())
        if (ended.signal.aborted) return camera.stop()
        await look(camera, video.current, ended.signal, {
          kinds,
          onLooking: () => setState({ kind: 'looking', light: camera.light }),
          onCode: (text) => tell(text),
        })
      } catch (error) {
        if (ended.signal.aborted) return
        setState({ kind: 'fault', fault: error instanceof CameraError ? error.fault : 'in-use' })
      }
    })()
    return () => ended.abort()
  }, [video, kinds])
  return state
}

interface Looking {
  readonly kinds: 'labels' | 'boxes'
  readonly onLooking: () => void
  readonly onCode: (text: string) => void
}

async function look(
  camera: Camera,
  video: HTMLVideoElement | null,
  ended: AbortSignal,
  { kinds, onLooking, onCode }: Looking,
): Promise<void> {
  if (!video) return
  video.srcObject = camera.stream
  await video.play()
  onLooking()
  const { readCode } = await import('./read-code.ts')
  const canvas = document.createElement('canvas')
  while (!ended.aborted) {
    const picture = pictureOf(video, canvas)
    const text = picture && (await readCode(picture, kinds))
    if (text && !ended.aborted) onCode(text)
    await new Promise((resolve) => setTimeout(resolve, pauseMs))
  }
}

function pictureOf(video: HTMLVideoElement, canvas: HTMLCanvasElement): ImageData | null {
  const { videoWidth, videoHeight } = video
  if (videoWidth === 0) return null
  const scale = Math.min(1, lookedAtPx / Math.max(videoWidth, videoHeight))
  canvas.width = Math.round(videoWidth * scale)
  canvas.height = Math.round(videoHeight * scale)
  const context = canvas.getContext('2d', { willReadFrequently: true })
  if (!context) return null
  context.drawImage(video, 0, 0, canvas.width, canvas.height)
  return context.getImageData(0, 0, canvas.width, canvas.height)
}
