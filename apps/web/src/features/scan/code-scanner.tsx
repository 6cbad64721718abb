import { Button } from '@mantine/core'
import { useRef, useState } from 'react'
import { cameraFaults } from './camera.ts'
import { useCameraCodes } from './use-camera-codes.ts'
import classes from './scan.module.css'

interface CodeScannerProps {
  /** Called with what a code holds; once, while the same code stays before the camera. */
  onCode: (text: string) => void
  /** `boxes` also takes the bar codes on makers' boxes; `labels` QR and Data Matrix only. */
  kinds?: 'labels' | 'boxes'
}

/** The camera, looking for a code: shows the picture, the lamp's switch where there is one, and what to do without a camera. */
export function CodeScanner(props: CodeScannerProps) {
  const [round, setRound] = useState(0)
  return <CameraPicture key={round} {...props} onAgain={() => setRound(round + 1)} />
}

function CameraPicture({ onCode, kinds = 'labels', onAgain }: CodeScannerProps & { onAgain: () => void }) {
  const video = useRef<HTMLVideoElement>(null)
  const [isLit, setLit] = useState(false)
  const state = useCameraCodes(video, kinds, onCode)
  const fault = state.kind === 'fault' ? cameraFaults[state.fault] : null
  const light = state.kind === 'looking' ? state.light : null
  const turnLight = async (): Promise<void> => {
    await light?.(!isLit)
    setLit(!isLit)
  }
  return (
    <div className={classes.scanner}>
      <div className={classes.picture} data-hidden={fault ? true : undefined}>
        <video ref={video} className={classes.video} muted playsInline aria-label="What the camera sees" />
        <svg viewBox="0 0 100 100" className={classes.corners} aria-hidden="true">
          <path d="M2 20V2h18M80 2h18v18M98 80v18H80M20 98H2V80" />
        </svg>
      </div>
      <div className={classes.says} aria-live="polite">
        {state.kind === 'starting' && <p>Starting the camera …</p>}
        {state.kind === 'looking' && <p>Hold the code inside the corners; a hand’s width away is near enough.</p>}
        {fault && (
          <>
            <p className={classes.faultTitle}>{fault.title}</p>
            <p>{fault.text}</p>
          </>
        )}
      </div>
      {fault && (
        <Button variant="default" size="touch" onClick={onAgain}>
          Start the camera again
        </Button>
      )}
      {light && (
        <Button variant="default" size="touch" aria-pressed={isLit} onClick={() => void turnLight()}>
          {isLit ? 'Light off' : 'Light on'}
        </Button>
      )}
    </div>
  )
}
