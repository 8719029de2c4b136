/**
 * How one saw is set for one cut. angle off square (0 square) and which way it leans ('flat' across the face, 'bevel'
 * through the thickness); depth of blade = thickness + one tooth; guideLines are for a guided saw: the line to clamp the
 * guide on, mm from the end or edge that is cut away, for each side of its base. cutAt is the cut's own place from that end
 * or edge. fence in mm for a rip against a fence, null otherwise.
 */
export type SawSetting = {
  saw: string
  cut: string
  part: string
  angle: number
  lean: 'flat' | 'bevel'
  depth: number
  cutAt: number | null
  fence: number | null
  guideLines: { side: 'left' | 'right'; at: number }[]
}
