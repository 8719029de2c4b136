/**
 * A leaf in one air: moisture content in %; boards the change of each board from the shop, hanging → closing, boardChange that of a full
 * cover; leafWidth over all; jointGap between two full boards (under 0 where they press); tongueReach into its groove, null without
 * tongues. mm.
 */
export type InAir = {
  moisture: number
  boardChange: number
  boards: number[]
  leafWidth: number
  jointGap: number
  tongueReach: number | null
}

/** One month of the year: moisture in %, width of the leaf over all and gap at a joint, mm. */
export type MonthInAir = Pick<InAir, 'moisture' | 'leafWidth' | 'jointGap'>

/** How the boarding moves with the air. gap is what is left at each joint when it is made, mm; months is empty where none are given. */
export type Movement = {
  species: string
  gap: number
  shop: InAir
  wettest: InAir
  driest: InAir
  months: MonthInAir[]
}
