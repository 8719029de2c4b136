/** A worked size and the drill of the workshop's own set to take for it. drill null: none needed, or none near. mm. */
export type DrillChoice = { exact: number; drill: number | null }

/**
 * The holes for one pair of parts. through is the part the fixing goes through first ('ledge', 'top ledge', 'brace');
 * fixing e.g. 'screw 5 × 50'; penetration is how far the point goes into the board, mm. lead null: none needed by the rule.
 */
export type Hole = {
  through: string
  quantity: number
  fixing: string
  fixingLength: number
  penetration: number
  clearance: DrillChoice | null
  lead: DrillChoice | null
  countersink: DrillChoice | null
}
