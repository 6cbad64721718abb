/** What the tables don't cover, as sentences for the reader. */
export const knownGaps: readonly string[] = Object.freeze([
  'The texts of the standards were not at hand: someone who has them has to spot-check a few rows of each table.',
  'Bearings, sleeves and nuts above bore code 96 (480 mm) are not tabled; clearance and the reduction guide go to 1000 mm.',
  'Adapter sleeves for 1:30 bores (series 240 and 241) exist in the trade and are not tabled.',
  '21304K, 22204K, 22304K, 23216K and 23217K have no adapter sleeve in the table.',
  'Withdrawal sleeves and sleeves with oil grooves for hydraulic mounting are not tabled.',
  'Inch lock nuts above size 44 are missing.',
  'The number of tabs of a lock washer is uncertain: count the washer in the hand.',
  'Plummer blocks of other series than SN2, SN3, SN5 and SN6, seal numbers and grease volumes of housings are not tabled.',
  'Cap bolt sizes differ by make and are left out on purpose: the housing maker gives them.',
  'The seat width of a housing differs by make: measure it before choosing rings.',
  'Load ratings and masses of bearings are not tabled: the bearing maker gives them.',
  'The reduction guide is trade practice for spherical roller bearings on solid steel shafts, and is not for class C2.',
  'The compatibility of greases follows the worst published chart; published charts contradict each other.',
  'The contamination factor for grease by formula is of low certainty; the levels of the standard are surer.',
  'Of the 2017 edition of ISO 15243 only the headings of the six groups were seen; clauses below them follow the 2004 edition.',
])
