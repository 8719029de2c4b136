/** The program's version, as it stands in package.json; told in "Copy details" and in what the book hands out. */
export const programVersion = '0.1.0'
