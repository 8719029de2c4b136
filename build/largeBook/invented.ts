import type { Draws } from '../bench/seeded.ts'

/** Everything here is made up: names and places are put together from the words of the bench and of the country. */
const given =
  'Wenna Barnaby Oswin Tilly Corin Zoé Ida Peg Élodie Bram Hester Jory Morwenna Silas Tamsin Rufus Lowenna Piers Clemence Ned Isolde Gwen Tobias Maud Fenn Odette Ivo Sabra Kit Nell Aldous Bryony Caspar Dilys Ewan Flora Giles Hedda Inigo Jessamy'.split(
    ' ',
  )
const surnameStarts =
  'Ash Bram Cold Dray Elm Fern Gorse Hazel Ivel Keld Larch Mallet Nether Orchard Pinch Quince Rabbet Saw Tenon Under Wattle Yarrow Chisel Spoke'.split(
    ' ',
  )
const surnameEnds =
  'ley ton wick ford combe croft beam worth stead hurst mere shaw dale gill thwaite bourne lock side'.split(
    ' ',
  )
const streets =
  'Marsh Mill Church Station Back High Well Green Orchard Chapel Forge Quarry Kiln Pound Ropewalk Saltern Dairy Tithe Weir Cuckoo Plough Gravel Beacon Foundry'.split(
    ' ',
  )
const ways = 'Lane Road Street Row Close Hill Yard Walk Terrace'.split(' ')
const townStarts = 'Upper Nether Much Little Great Saint Long Old West East North South'.split(' ')
const townEnds =
  'Shaving Kerf Mallet Bench Rabot Tenon Dovetail Gluepot Sawdust Bevel Mortice Spokeshave Splay Arris Batten Chamfer'.split(
    ' ',
  )
const things =
  'gate,gate,gate,gate,side gate,side gate,garden gate,garden gate,field gate,orchard gate,shed door,shed door,stable door,meter cupboard door,pair of drive gates,passage gate,coal house door,wicket,back gate,churchyard gate,paddock gate,bin store door'.split(
    ',',
  )
const notes =
  'Post leans towards the road,Dog must not get under it,Wants it by the wedding,Old hooks to be used again,Ring before coming,Ground rises to the left,Key with the neighbour at the back,Paint by others,Match the gate next door,Wall is soft, ask before drilling,Opens outwards onto the path,Measured twice in the rain,Customer will fit it,Latch to be reached from both sides,Cat flap asked for and talked out of,Left the old gate in the workshop,Bees by the hinge post,Paid the deposit in cash,Narrow passage so bring it in by the garden,Wants the top bowed like the church’s'.split(
    /,(?! ask)/,
  )
const rare =
  'wisteria,hedgehog,letterbox,portcullis,peacock,yew,bellpull,cartwheel,sundial,beehive,dovecote,millstone,trellis,weathervane,horseshoe'.split(
    ',',
  )

/** Surnames and towns in the order of how often they come: the first ones far oftener than the last. */
const surnames = surnameStarts.flatMap((start) => surnameEnds.map((end) => `${start}${end}`))
const towns = townEnds.flatMap((end) => townStarts.map((start) => `${start} ${end}`))

/** One of a list, the first ones oftener: the square of an even draw. */
const oftenFirst = <T>({ between }: Draws, list: readonly T[]): T => {
  const share = between(0, 9999) / 10000
  return list[Math.floor(share * share * list.length)] as T
}

export type InventedCustomer = { name: string; address: string; town: string; phone: string; email: string }

/** A customer nobody is, with a telephone number from those the British regulator keeps free for made-up people (01632 960000 to 960999). */
export function inventedCustomer(draws: Draws): InventedCustomer {
  const { between, one } = draws
  const first = one(given)
  const surname = oftenFirst(draws, surnames)
  return {
    name: between(1, 12) === 1 ? `Mrs ${surname}` : `${first} ${surname}`,
    address: `${between(1, 180)} ${oftenFirst(draws, streets)} ${one(ways)}`,
    town: oftenFirst(draws, towns),
    phone: `01632 960${String(between(0, 999)).padStart(3, '0')}`,
    email: between(1, 3) === 1 ? `${surname.toLowerCase()}${between(1, 99)}@example.com` : '',
  }
}

const capital = (words: string): string => `${words[0]?.toUpperCase()}${words.slice(1)}`

/** What a job is called: 'Side gate', now and then with the street it stands in. */
export const inventedTitle = ({ between, one }: Draws): string =>
  capital(one(things)) + (between(1, 5) === 1 ? `, ${one(streets)} ${one(ways)}` : '')

/** A job's notes: none, or up to four remarks; one job in 400 has a word that hardly any other has. */
export function inventedNotes({ between, one }: Draws): string {
  const said = Array.from({ length: between(0, 4) }, () => `${one(notes)}.`)
  return [...said, ...(between(1, 400) === 1 ? [`Mind the ${one(rare)}.`] : [])].join(' ')
}
