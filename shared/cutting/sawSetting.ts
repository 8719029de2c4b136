/**
 * How one saw is set for one cut. angle off square (0 square) and which way it leans ('flat' across the face, 'bevel'
 * through the thickness); depth of blade = thickness cut through + one tooth; guideLines are for a guided saw, one for each side of
 * its base: the line to lay the guide on, in mm from the end or edge that is cut away (cutAt is the cut's own place from there;
 * 0 for an angled cut, where the guide line lies square off the marked cut). fence in mm for a rip against a fence, else null.
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
