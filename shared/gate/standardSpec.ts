import type { DraftSpec, GateSpec, Section, Workshop } from './spec.ts'

/** Sections a new gate starts from. Covers and thicknesses are common practice for ex 25 × 125 matching and planed softwood. */
export const standardSections = {
  boards: {
    name: 'ex 25 × 125 T&G V',
    species: 'European redwood',
    thickness: 20,
    width: 112,
    tongue: 7,
    groove: 8,
  },
  ledges: { name: 'ex 32 × 150 planed', species: 'European redwood', thickness: 28, width: 145 },
  braces: { name: 'ex 32 × 100 planed', species: 'European redwood', thickness: 28, width: 95 },
} satisfies Record<string, Section>

/** The workshop's tools until it has said its own: common practice, no standard behind them. */
export const standardWorkshop: Workshop = {
  saws: [
    { name: 'table saw', kerf: 3, tooth: 5 },
    { name: 'hand-held saw', kerf: 2, tooth: 5, guideLeft: 40, guideRight: 105 },
  ],
  drills: [1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5, 7, 8, 9, 10, 12],
  clearance: 0.5,
  leadRule: 'lateral',
}

/** The workshop of a spec, or common practice with no saws where it says nothing. */
export const workshopOf = (spec: GateSpec): Workshop => spec.workshop ?? { ...standardWorkshop, saws: [] }

/**
 * The gate a new job starts from: ledged and braced, one leaf, sizes still to come. Ripped at both edges: the reduction comes off one board
 * at each side (L. Goring, Manual of Purpose-Made Woodworking Joinery, p. 86), which never leaves a board too narrow to make.
 */
export const standardDraft = (workshop: Workshop = standardWorkshop): DraftSpec => ({
  version: 1,
  construction: 'ledged-braced',
  leaves: 1,
  hung: 'right',
  size: { from: 'leaf', width: null, height: null },
  top: { shape: 'level' },
  boards: { section: standardSections.boards, rip: 'both', tongues: 'to-closing', gap: 2, endTrim: 10 },
  ledges: {
    section: standardSections.ledges,
    count: 'auto',
    hangingInset: 10,
    closingInset: 10,
    end: { cut: 'bevelled', angle: 15 },
    heights: 'auto',
  },
  braces: {
    section: standardSections.braces,
    footSetback: 40,
    headSetback: 40,
    run: 'in-line',
    ends: 'flush',
  },
  fixings: { kind: 'screw', diameter: 5, lengths: [30, 35, 40, 45, 50, 60, 70] },
  ironmongery: [],
  workshop,
})
