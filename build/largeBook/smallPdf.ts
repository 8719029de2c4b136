import { createHash } from 'node:crypto'

/** A paper's bytes with their hash, made once and frozen under many jobs. */
export type SmallPdf = { bytes: Buffer; sha256: string }

/** A whole PDF of one A4 page with one line of words on it, some 700 bytes: in place of a real card of 45 kB, so that a book of 100,000 jobs fits a disk. */
export function smallPdf(words: string): SmallPdf {
  const drawn = `BT /F1 14 Tf 60 770 Td (${words}) Tj ET`
  const objects = [
    '<< /Type /Catalog /Pages 2 0 R >>',
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 595 842] /Contents 4 0 R /Resources << /Font << /F1 5 0 R >> >> >>',
    `<< /Length ${drawn.length} >>\nstream\n${drawn}\nendstream`,
    '<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>',
  ]
  let text = '%PDF-1.4\n'
  const places = objects.map((object, index) => {
    const at = text.length
    text += `${index + 1} 0 obj\n${object}\nendobj\n`
    return `${String(at).padStart(10, '0')} 00000 n \n`
  })
  const table = `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${places.join('')}`
  const bytes = Buffer.from(
    `${text}${table}trailer << /Size ${objects.length + 1} /Root 1 0 R >>\nstartxref\n${text.length}\n%%EOF\n`,
    'latin1',
  )
  return { bytes, sha256: createHash('sha256').update(bytes).digest('hex') }
}
