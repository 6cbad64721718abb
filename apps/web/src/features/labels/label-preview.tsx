import { labelPlaces, type LabelSheet } from '@shaftbook/contract/label-sheet'
import classes from './labels.module.css'

interface LabelPreviewProps {
  sheet: LabelSheet
  startAt: number
  /** How many labels are wanted; undefined while unknown: the page is full. */
  count: number | undefined
}

/** The first page in outline: where labels go, and which places stay free. */
export function LabelPreview({ sheet, startAt, count = Infinity }: LabelPreviewProps) {
  const { pageWidthMm, pageHeightMm, labelWidthMm, labelHeightMm, columns, rows } = sheet
  const places = labelPlaces(sheet, columns * rows, 1)
  const printed = Math.min(columns * rows - startAt + 1, count)
  const size = [labelWidthMm, labelHeightMm].map((mm) => Math.round(mm * 10) / 10).join(' × ')
  return (
    <figure className={classes.preview}>
      <svg
        viewBox={`-1 -1 ${pageWidthMm + 2} ${pageHeightMm + 2}`}
        role="img"
        aria-label={`The first page: labels of ${size} mm, ${columns} across and ${rows} down, from place ${startAt}.`}
      >
        <rect width={pageWidthMm} height={pageHeightMm} className={classes.page} />
        {places.map(({ xMm, yMm }, index) => (
          <rect
            key={index}
            x={xMm}
            y={yMm}
            width={labelWidthMm}
            height={labelHeightMm}
            className={index + 1 >= startAt && index + 1 < startAt + printed ? classes.label : classes.free}
          />
        ))}
      </svg>
      <figcaption>Label {size} mm</figcaption>
    </figure>
  )
}
