import { useState } from 'react'
import { UnitsProvider } from '../lib/units.tsx'
import { destinationHrefs } from '../paths.ts'
import { AppFrame } from '../ui/app-frame.tsx'
import { DeviceMark } from '../ui/device-mark.tsx'
import { PageHead } from '../ui/page-head.tsx'
import { GalleryDriveUp } from './gallery-drive-up.tsx'
import { GalleryFields } from './gallery-fields.tsx'
import { GalleryGauge } from './gallery-gauge.tsx'
import { GalleryLife } from './gallery-life.tsx'
import { GalleryLists } from './gallery-lists.tsx'
import { GalleryMessages } from './gallery-messages.tsx'

const sites = [
  { id: 'hp', name: 'Harrow Point' },
  { id: 'sl', name: 'Skerry Lane' },
]

/** Every part of the interface kit in its states, for the eye of a developer. */
export function Gallery() {
  const [siteId, setSiteId] = useState('hp')
  return (
    <UnitsProvider personId="gallery">
      <AppFrame
        hrefs={destinationHrefs('harrow-point')}
        active="flags"
        flagCount={37}
        sites={sites}
        siteId={siteId}
        onSite={setSiteId}
        person={{ name: 'Maren Oduya', role: 'Reliability engineer' }}
        onSignOut={() => setSiteId('hp')}
        device={<DeviceMark href="#" active={false} silent waiting={2} refused={1} />}
      >
        <PageHead
          title="BE-07 / DE"
          trail={[
            { label: 'Positions', href: destinationHrefs('harrow-point').positions },
            { label: 'Elevators', href: destinationHrefs('harrow-point').positions },
            { label: 'BE-07 head shaft', href: destinationHrefs('harrow-point').positions },
          ]}
          sentence="Head shaft of bucket elevator 7, drive end. One bearing fitted since March 2025."
          facts={[
            { label: 'Bearing', value: '22220 K/C3' },
            { label: 'Role', value: 'locating' },
            { label: 'Speed', value: '92 rev/min' },
            { label: 'Run hours', value: '41 280 h' },
          ]}
        />
        <GalleryDriveUp />
        <GalleryGauge />
        <GalleryLife />
        <GalleryLists />
        <GalleryFields />
        <GalleryMessages />
      </AppFrame>
    </UnitsProvider>
  )
}
