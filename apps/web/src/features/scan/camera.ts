/** Why there is no picture, and how to go on. */
export type CameraFault = 'no-camera' | 'refused' | 'in-use' | 'not-offered'

export const cameraFaults: Readonly<Record<CameraFault, { title: string; text: string }>> = {
  'no-camera': { title: 'No camera here', text: 'This device has no camera that the browser can use. Type the code.' },
  refused: {
    title: 'The camera is not allowed',
    text: 'Allow the camera for this page in the settings of the browser, then start it again; or type the code.',
  },
  'in-use': {
    title: 'The camera does not start',
    text: 'Another program may be using it. Close that one and start the camera again, or type the code.',
  },
  'not-offered': {
    title: 'The browser gives no camera here',
    text: 'A browser gives the camera to pages that come by https only. Type the code.',
  },
}

export interface Camera {
  readonly stream: MediaStream
  /** Switches the lamp; null where the camera has none. */
  readonly light: ((on: boolean) => Promise<void>) | null
  stop(): void
}

/** W3C MediaStream Image Capture: a lamp that burns while the camera looks. */
interface Lamp {
  readonly torch?: boolean
}

/** Opens the camera that looks away from the person. @throws CameraError */
export async function openCamera(): Promise<Camera> {
  if (!('mediaDevices' in navigator)) throw new CameraError('not-offered')
  const video = { facingMode: { ideal: 'environment' }, width: { ideal: 1280 }, height: { ideal: 960 } }
  const stream = await navigator.mediaDevices.getUserMedia({ video, audio: false }).catch((error: unknown) => {
    throw new CameraError(faultOf(error), { cause: error })
  })
  const [track] = stream.getVideoTracks()
  const can: MediaTrackCapabilities & Lamp = track?.getCapabilities?.() ?? {}
  const light = async (on: boolean): Promise<void> => {
    const lamp: MediaTrackConstraintSet & Lamp = { torch: on }
    await track?.applyConstraints({ advanced: [lamp] })
  }
  return {
    stream,
    light: can?.torch ? light : null,
    stop: () => stream.getTracks().forEach((each) => each.stop()),
  }
}

export class CameraError extends Error {
  override readonly name = 'CameraError'
  readonly fault: CameraFault

  constructor(fault: CameraFault, options?: ErrorOptions) {
    super(cameraFaults[fault].title, options)
    this.fault = fault
  }
}

function faultOf(error: unknown): CameraFault {
  const name = error instanceof DOMException ? error.name : ''
  if (name === 'NotAllowedError' || name === 'SecurityError') return 'refused'
  if (name === 'NotFoundError' || name === 'OverconstrainedError') return 'no-camera'
  return 'in-use'
}
