// Made from csv/iso15243_failure_modes.csv by generate.ts. Change the table and run `npm run standards`.
import { defineTable, type Certainty } from './table.ts'

export interface FailureModeRow {
  readonly clause: string
  readonly parentClause: string | null
  readonly term: string
  readonly level: string
  readonly description: string
  readonly usualCauses: string | null
  readonly signs: string | null
  readonly editionNote: string
  readonly certainty: Certainty
}

/** Failure modes of rolling bearings. ISO 15243. */
export const failureModesTable = defineTable<FailureModeRow>({
  title: 'Failure modes of rolling bearings',
  standard: 'ISO 15243',
  edition: '2017',
  rows: [
    {
      clause: '5',
      parentClause: null,
      term: 'Failure modes',
      level: 'group',
      description: 'Top of the tree',
      usualCauses: null,
      signs: null,
      editionNote: '2004 and 2017',
      certainty: 'high',
    },
    {
      clause: '5.1',
      parentClause: '5',
      term: 'Rolling contact fatigue',
      level: 'mode',
      description: 'Material breaks out of a raceway or rolling element after many stress cycles',
      usualCauses: null,
      signs: null,
      editionNote: '2017 wording (2004: fatigue)',
      certainty: 'high',
    },
    {
      clause: '5.1.2',
      parentClause: '5.1',
      term: 'Subsurface initiated fatigue',
      level: 'submode',
      description: 'Cracks start below the surface at the depth of highest shear and work up until flakes come out',
      usualCauses:
        'Life used up; load above design; misalignment or axial load concentrating stress; too little operating clearance (over-driven on the taper); steel inclusion',
      signs:
        'Deep, ragged spall with sharp edges in the loaded zone, rest of the raceway still bright; flakes in the grease; vibration at ring-pass frequency grows over weeks',
      editionNote: '2004 and 2017',
      certainty: 'high',
    },
    {
      clause: '5.1.3',
      parentClause: '5.1',
      term: 'Surface initiated fatigue',
      level: 'submode',
      description: 'Damage starts in the surface skin where the lubricant film is too thin or a dent raises stress',
      usualCauses:
        'Wrong or old grease, low viscosity at temperature, missed regreasing, water in grease, dents from dirt, skidding',
      signs:
        'Dull or frosted raceway, fine crazing then shallow pitting; often starts at a dent and trails in rolling direction',
      editionNote: '2004 and 2017',
      certainty: 'high',
    },
    {
      clause: '5.2',
      parentClause: '5',
      term: 'Wear',
      level: 'mode',
      description: 'Material is removed by sliding between surfaces',
      usualCauses: null,
      signs: null,
      editionNote: '2004 and 2017',
      certainty: 'high',
    },
    {
      clause: '5.2.2',
      parentClause: '5.2',
      term: 'Abrasive wear',
      level: 'submode',
      description: 'Hard particles or starved contact grind material away bit by bit',
      usualCauses:
        'Dust past worn or missing seals, dirty mounting bench, dirty grease gun nipple, long relubrication interval',
      signs: 'Dull grey raceways, worn cage pockets, clearance grown well above the mounted value, dark gritty grease',
      editionNote: '2004 and 2017',
      certainty: 'high',
    },
    {
      clause: '5.2.3',
      parentClause: '5.2',
      term: 'Adhesive wear',
      level: 'submode',
      description: 'Sliding parts weld momentarily and tear, moving metal from one to the other (smearing, scuffing)',
      usualCauses:
        'Load too light for the speed, fast acceleration, stiff cold grease, too much clearance, ring creeping on sleeve or in housing',
      signs:
        'Smeared, heat-tinted patches on rollers or at entry to the loaded zone; roller end scuffing; polished creep marks in bore',
      editionNote: '2004 and 2017',
      certainty: 'high',
    },
    {
      clause: '5.3',
      parentClause: '5',
      term: 'Corrosion',
      level: 'mode',
      description: 'Chemical attack of the steel',
      usualCauses: null,
      signs: null,
      editionNote: '2004 and 2017',
      certainty: 'high',
    },
    {
      clause: '5.3.2',
      parentClause: '5.3',
      term: 'Moisture corrosion',
      level: 'submode',
      description: 'Rust from water, acid or other aggressive media',
      usualCauses:
        'Wash-down, condensation while idle, failed seals, unsuitable grease, bare-hand prints, poor storage',
      signs: 'Red-brown or black spots, etched marks at roller spacing after standstill; milky or rusty grease',
      editionNote: '2004 and 2017',
      certainty: 'high',
    },
    {
      clause: '5.3.3',
      parentClause: '5.3',
      term: 'Frictional corrosion',
      level: 'submode',
      description: 'Oxidation driven by tiny relative movement',
      usualCauses: null,
      signs: null,
      editionNote: '2004 and 2017',
      certainty: 'high',
    },
    {
      clause: '5.3.3.2',
      parentClause: '5.3.3',
      term: 'Fretting corrosion',
      level: 'submode',
      description:
        'Micromovement between fitted faces (bore on sleeve, sleeve on shaft, OD in housing) makes oxide powder',
      usualCauses:
        'Drive-up too small, shaft undersize or rough, housing bore worn or out of round, loose cap, bent sleeve',
      signs:
        'Red-brown to black powder or patches in bore or on OD; sleeve stuck to the shaft; sometimes a ring crack begins there',
      editionNote: '2004 and 2017',
      certainty: 'high',
    },
    {
      clause: '5.3.3.3',
      parentClause: '5.3.3',
      term: 'False brinelling',
      level: 'submode',
      description: 'Small oscillation or vibration while not turning wears hollows at each roller',
      usualCauses:
        'Standby machine next to running ones, transport without locking, long standstill without turning the shaft',
      signs: 'Evenly spaced hollows at roller pitch with no raised edge, rust-red or bright; noise on first start',
      editionNote: '2004 and 2017',
      certainty: 'high',
    },
    {
      clause: '5.4',
      parentClause: '5',
      term: 'Electrical erosion',
      level: 'mode',
      description: 'Current passing through the rolling contact removes material',
      usualCauses: null,
      signs: null,
      editionNote: '2004 and 2017',
      certainty: 'high',
    },
    {
      clause: '5.4.2',
      parentClause: '5.4',
      term: 'Excessive current erosion',
      level: 'submode',
      description: 'High current melts local craters by arcing',
      usualCauses: 'Welding with the return cable clamped the wrong side of the bearing, lightning, insulation failure',
      signs: 'Single burnt craters or a row of them at contact spacing, weld-like pits, heat marks',
      editionNote: '2017 wording (2004: excessive voltage)',
      certainty: 'high',
    },
    {
      clause: '5.4.3',
      parentClause: '5.4',
      term: 'Current leakage erosion',
      level: 'submode',
      description: 'Repeated small discharges pit the surface and later form washboard fluting',
      usualCauses: 'Variable-speed drive shaft voltage, missing earthing brush or insulated bearing, static from belts',
      signs: 'Grey frosted track, then regular axial flutes; blackened grease; washboard noise',
      editionNote: '2004 and 2017',
      certainty: 'high',
    },
    {
      clause: '5.5',
      parentClause: '5',
      term: 'Plastic deformation',
      level: 'mode',
      description: 'Surface permanently dented or displaced',
      usualCauses: null,
      signs: null,
      editionNote: '2004 and 2017',
      certainty: 'high',
    },
    {
      clause: '5.5.2',
      parentClause: '5.5',
      term: 'Overload deformation',
      level: 'submode',
      description:
        'Static or shock load pushes rolling elements into the raceway (true brinelling); includes blows during handling or mounting',
      usualCauses: 'Hammer on a ring or sleeve transmitted through rollers, dropped shaft, jammed machine, crane shock',
      signs:
        'Dents at roller pitch with raised rims, original grinding marks visible in the bottom of the dent; nicks on ring faces',
      editionNote: '2004 and 2017',
      certainty: 'high',
    },
    {
      clause: '5.5.3',
      parentClause: '5.5',
      term: 'Indentations from particles',
      level: 'submode',
      description: 'Particles rolled over leave dents with raised shoulders',
      usualCauses: 'Dirt in new grease, unwashed housing, seal loss, debris from another failing part',
      signs: 'Scattered dents of mixed size all round the track; later spalls start at them',
      editionNote: '2017 wording (2004: indentation from debris)',
      certainty: 'high',
    },
    {
      clause: '5.5.4',
      parentClause: '5.5',
      term: 'Indentation from handling',
      level: 'submode',
      description:
        'Dents and gouges made by hard or sharp objects before or during mounting (own clause in the 2004 edition; the 2017 edition treats it under overload deformation)',
      usualCauses: 'Drift and hammer mounting, feeler blade forced through, bearing dropped, tools laid in the bearing',
      signs: 'Local nicks or bruises on a ring face, raceway or roller, at one place only',
      editionNote: '2004 only',
      certainty: 'high',
    },
    {
      clause: '5.6',
      parentClause: '5',
      term: 'Cracking and fracture',
      level: 'mode',
      description: 'A part breaks through or is cracked',
      usualCauses: null,
      signs: null,
      editionNote: '2004 and 2017',
      certainty: 'high',
    },
    {
      clause: '5.6.2',
      parentClause: '5.6',
      term: 'Forced fracture',
      level: 'submode',
      description: 'One-time stress above strength breaks the part',
      usualCauses: 'Excessive drive-up on the taper, hammer blow, impact, wrong pulling tool, foreign object jam',
      signs: 'Ring split across, rib or corner broken, coarse bright fracture face with no beach marks',
      editionNote: '2004 and 2017',
      certainty: 'high',
    },
    {
      clause: '5.6.3',
      parentClause: '5.6',
      term: 'Fatigue fracture',
      level: 'submode',
      description: 'Crack grows under repeated bending or hoop stress until the part separates',
      usualCauses:
        'Fretting or notch in bore, excessive interference, poorly supported outer ring (housing out of round), cage vibration',
      signs: 'Beach marks on the fracture face, long axial crack through inner ring, cracked cage bars',
      editionNote: '2004 and 2017',
      certainty: 'high',
    },
    {
      clause: '5.6.4',
      parentClause: '5.6',
      term: 'Thermal cracking',
      level: 'submode',
      description: 'Local sliding heat makes cracks at right angles to sliding',
      usualCauses:
        'Ring face or seal rubbing, lock washer or spacer dragging, ring spinning on shaft, torch used for removal',
      signs: 'Fine cracks across a burnished, heat-coloured band, blue or straw tint',
      editionNote: '2004 and 2017',
      certainty: 'high',
    },
  ],
})
